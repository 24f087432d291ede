import { pointInProfile } from "../geometry/inside.js";
import { extentsOf } from "../geometry/measure.js";
import type { Point } from "../geometry/profile.js";
import type { Registration } from "../model/build.js";
import type { FeatureId, PartId } from "../model/ids.js";
import type { Pin, Setup } from "../model/program.js";
import { pinsOn } from "../process/pins.js";
import { type Bench, type Cut, type Done, type Lying, type Tool, together } from "./bench.js";
import type { Clamping } from "./clampings.js";
import { cutPart } from "./features.js";
import { holeMoves } from "./holes.js";
import { inOrder, type Standing } from "./order.js";
import { type Stint, stintsOf } from "./runs.js";
import { isSmall } from "./tabs.js";
import { cutThrough } from "./through.js";
import type { Toolbox } from "./toolbox.js";

/** A setup before its tools have places in the machine. */
export type Draft = {
  readonly clamping: Clamping;
  readonly stints: readonly Stint[];
  readonly pins: readonly Pin[];
  /** Dowels keep the sheet in register, but their holes are not made here. */
  readonly unpinned: boolean;
  readonly withheld: readonly FeatureId[];
};

/** What is cut in one clamping, in order. `registration`: where the sheet is turned over, pins keep it in register. */
export function draftOf(
  bench: Bench,
  clamping: Clamping,
  toolbox: Toolbox,
  registration: Registration | undefined,
): { readonly draft: Draft; readonly findings: Done["findings"] } {
  const parts = clamping.lying.map((lying) => cutPart(bench, lying, toolbox));
  const through = cutThrough(
    bench,
    clamping.sheet,
    parts.flatMap(({ ways }) => ways),
  );
  const done = together([...parts.map((part) => part.done), through]);
  const pins = registration ? pinsIn(bench, clamping, registration) : [];
  const tool = toolbox.tools.get(registration?.tool ?? "");
  const made = clamping.turnedOver || tool === undefined ? [] : pins.flatMap((pin) => madePin(bench, tool, pin) ?? []);
  const cuts = [...made, ...done.cuts];
  return {
    draft: {
      clamping,
      stints: stintsOf(inOrder(cuts, standingOf(clamping.lying))),
      pins,
      unpinned: !clamping.turnedOver && made.length < pins.length,
      withheld: done.withheld,
    },
    findings: done.findings,
  };
}

export function setupOf(draft: Draft, runs: Setup["runs"], bench: Bench, seconds: number): Setup {
  const { sheet, name, turnedOver, lying } = draft.clamping;
  return {
    name,
    sheet: sheet.sheet,
    board: sheet.board,
    turnedOver,
    length: sheet.length,
    width: sheet.width,
    thickness: bench.thickness,
    safe: bench.safe,
    parts: lying.map(({ part, up, profile, blank }) => ({ part: part.id, up, profile, blank })),
    pins: draft.pins,
    runs,
    withheld: draft.withheld,
    seconds,
  };
}

function pinsIn(bench: Bench, { sheet }: Clamping, registration: Registration): readonly Pin[] {
  const depth = bench.thickness + registration.into;
  return pinsOn(registration, sheet).map((at: Point) => ({ at, d: registration.d, depth }));
}

function madePin(bench: Bench, tool: Tool, { at, d, depth }: Pin): Cut | undefined {
  const moves = holeMoves(bench, tool, at, d, -depth)?.moves;
  return moves && { tool, operation: { kind: "pin", moves, floor: -depth } };
}

/** How deep each part lies within openings of others, and whether it is small. */
function standingOf(lying: readonly Lying[]): ReadonlyMap<PartId, Standing> {
  const hosts = lying.flatMap(({ blank }) => blank.holes.map((hole) => ({ hole, box: extentsOf(hole) })));
  return new Map(
    lying.map(({ part, blank }) => {
      const p = blank.outer[0]!;
      const around = hosts.filter(
        ({ hole, box }) =>
          p.x > box.min.x && p.x < box.max.x && p.y > box.min.y && p.y < box.max.y && pointInProfile(hole, p),
      );
      return [part.id, { level: around.length, small: isSmall(blank.outer) }] as const;
    }),
  );
}
