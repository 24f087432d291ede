import type { Profile } from "../geometry/profile.js";
import { type Finding, mm, raise, text } from "../input/finding.js";
import { nameOf } from "../plan/standing.js";
import type { Bench, Done, Lying } from "./bench.js";
import { clearArea } from "./clearing.js";
import { noRoomForTabs } from "./findings.js";
import { type Hold, holdAll } from "./hold.js";
import { roundLoop } from "./round.js";
import { tabHeight } from "./tabs.js";
import type { Way } from "./ways.js";

/** What a skin leaves of the board, mm: common practice, no source. */
export const skinThickness = 0.5;

/** Cuts parts out of a sheet and openings out of them, each held as it can be. */
export function cutThrough(
  bench: Bench,
  sheet: { readonly length: number; readonly width: number },
  ways: readonly Way[],
): Done {
  const holds = holdAll(bench, sheet, ways);
  const cuts = ways.map((way, i) => ({ tool: way.tool, operation: operationOf(bench, way, holds[i]!) }));
  const findings = ways.flatMap((way, i) =>
    bench.cnc.hold === "tabs" && holds[i]!.by === "skin" ? [leftOnSkin(way.lying)] : [],
  );
  return { cuts, findings, withheld: [] };
}

function operationOf(bench: Bench, way: Way, hold: Hold) {
  const { kind, lying, feature, tool, loop, area } = way;
  const floor = hold.by === "skin" ? skinThickness - bench.thickness : bench.through;
  const clears = hold.by === "nothing" && way.dropped && area !== undefined;
  const bridges = { top: tabHeight(bench.thickness) - bench.thickness, kept: hold.kept };
  const moves = clears
    ? clearArea(bench, tool, area, floor)
    : roundLoop(bench, tool, loop, floor, cutLoops(lying), bridges);
  return { kind, part: lying.part.id, feature: feature.id, moves, floor };
}

/** What the leads keep off. */
const cutLoops = ({ blank, profile }: Lying): readonly Profile[] => [blank.outer, ...profile.holes];

function leftOnSkin({ part }: Lying): Finding {
  const facts = { part: text(nameOf(part)), skin: mm(skinThickness) };
  return raise(noRoomForTabs, { at: part.from, on: [part.id], facts });
}
