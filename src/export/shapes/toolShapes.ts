import type { Path, Vertex } from "../../geometry/profile.js";
import { formatNumber } from "../../input/number.js";
import type { Build } from "../../model/build.js";
import type { Move, Operation, Run, Setup } from "../../model/program.js";
import type { Shape } from "./shape.js";

/**
 * Where the middle of each bit runs on its last pass, with lead-ins, moved off the line by the bit's measured radius: for
 * a machine that compensates nothing itself. A layer for each tool and kind of work; where the bit is lifted over a tab
 * the line goes on on a layer of its own. Holes that are drilled are rounds of the drill's width. Setup frame.
 */
export function toolShapes({ runs, pins }: Setup): readonly Shape[] {
  return [
    ...runs.flatMap((run) => run.operations.flatMap((operation) => shapesOf(run, operation))),
    ...pins.map(({ at, d }): Shape => ({ kind: "round", layer: "PIN", at, d })),
  ];
}

/** Which tool each layer's number means, and how wide it cuts. */
export function toolLines({ shop }: Build, { runs }: Setup): readonly string[] {
  if (shop.cnc === undefined) return [];
  return runs.map(
    ({ number, tool, d }) =>
      `TOOL-${number} layers: middle of ${tool}, which cuts ${formatNumber(d, 4)} mm wide; last pass`,
  );
}

function shapesOf({ number, d }: Run, { kind, moves, floor }: Operation): readonly Shape[] {
  const layer = `TOOL-${number}-${kind.toUpperCase()}`;
  const cut = chainsOf(moves, (move, from) => move.to[2] <= floor + flat && from[2] <= floor + flat);
  const tabs = chainsOf(moves, (move, from) => move.role === "tab" && Math.abs(move.to[2] - from[2]) < flat);
  if (cut.length > 0 || tabs.length > 0)
    return [
      ...cut.map((path): Shape => ({ kind: "chain", layer, path })),
      ...tabs.map((path): Shape => ({ kind: "chain", layer: `TOOL-${number}-TAB`, path })),
    ];
  const deepest = moves.find(({ to }) => to[2] <= floor + flat);
  return deepest ? [{ kind: "round", layer, at: { x: deepest.to[0], y: deepest.to[1] }, d }] : [];
}

/** Moves that run level differ in height by less, mm. */
const flat = 1e-6;

/** The stretches of moves that are wanted, each as an open line. */
function chainsOf(moves: readonly Move[], wanted: (move: Move, from: Move["to"]) => boolean): readonly Path[] {
  const chains: Vertex[][] = [];
  let open = false;
  moves.forEach((move, i) => {
    const from = moves[i - 1]?.to;
    const moved = from !== undefined && Math.hypot(move.to[0] - from[0], move.to[1] - from[1]) > flat;
    if (from === undefined || move.feed === "rapid" || !moved || !wanted(move, from)) {
      open = open && from !== undefined && !moved && wanted(move, from);
      return;
    }
    if (!open) chains.push([vertex(from)]);
    const chain = chains[chains.length - 1]!;
    chain.push({ ...chain.pop()!, bulge: move.bulge }, vertex(move.to));
    open = true;
  });
  return chains;
}

const vertex = ([x, y]: Move["to"]): Vertex => ({ x, y, bulge: 0, by: "tool" });
