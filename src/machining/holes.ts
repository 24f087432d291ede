import type { Point, Region } from "../geometry/profile.js";
import { circle } from "../geometry/shapes.js";
import { type Finding, raise, text } from "../input/finding.js";
import { featureName } from "../model/ids.js";
import type { Feature, Cut as PartCut, Sink } from "../model/part.js";
import type { Move } from "../model/program.js";
import { nameOf } from "../plan/standing.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { type Centres, centresInside } from "./centres.js";
import { clearArea } from "./clearing.js";
import { cannot, faultOf, tooShort, withheld } from "./faults.js";
import { sinkLeft } from "./findings.js";
import { approach, line, rise, slowFrom } from "./moves.js";
import { paceOf } from "./speeds.js";

export type Hole = Extract<PartCut, { kind: "hole" }>;

/** A bit within this of a hole's diameter goes straight down: mm, common practice, no source. */
const sameHole = 0.1;

/** A drill is drawn out to clear its chips after going this many diameters deeper: common practice, no source. */
const peckShare = 3;

/** Drills a hole, or bores it round and round with a thinner straight bit. */
export function makeHole(bench: Bench, lying: Lying, feature: Feature, tool: Tool, { at, d, depth }: Hole): Done {
  const floor = depth === "through" ? bench.through : -depth;
  const short = tooShort(lying, feature, tool, -floor);
  if (short) return withheld(feature, short);
  const made = holeMoves(bench, tool, lying.to.point(at), d, floor);
  if (made === undefined) return cannot(lying, feature, tool, "it is not of the hole's diameter");
  if (made.moves === undefined) return withheld(feature, faultOf(lying, feature, tool, made.centres));
  const operation = { kind: "drill", part: lying.part.id, feature: feature.id, moves: made.moves, floor } as const;
  return { cuts: [{ tool, operation }], findings: [], withheld: [] };
}

/** Where the bit did not go round in the hole. */
type NotMade = { readonly moves?: undefined; readonly centres: Exclude<Centres, { regions: readonly Region[] }> };

/**
 * The way of a bit that makes a hole at `at`, setup's frame: straight down where it is of the hole's size, round and round
 * where it is a thinner straight one.
 *
 * Returns: undefined where it is neither.
 */
export function holeMoves(
  bench: Bench,
  tool: Tool,
  at: Point,
  d: number,
  floor: number,
): { readonly moves: readonly Move[] } | NotMade | undefined {
  if (Math.abs(tool.d - d) <= sameHole + 1e-6) return { moves: drill(bench, tool, at, floor) };
  if (tool.bit.kind === "drill" || tool.d > d) return undefined;
  const centres = centresInside({ outer: circle(at, d / 2, "hole"), holes: [] }, tool.radius);
  if (centres.regions === undefined) return { centres };
  return { moves: clearArea(bench, tool, centres.regions[0]!, floor) };
}

/** Straight down in pecks, drawn out to the sheet's top after each; `at` in the setup's frame. */
export function drill(bench: Bench, tool: Tool, at: Point, floor: number): readonly Move[] {
  const pace = paceOf(bench.cnc, tool.speeds, tool.d, tool.d);
  const pecks = Math.max(1, Math.ceil(-floor / (peckShare * tool.d) - 1e-9));
  const moves: Move[] = [...approach(at, slowFrom, bench.safe, pace)];
  for (let i = 1; i <= pecks; i++) {
    const back = slowFrom + (floor * (i - 1)) / pecks;
    if (i > 1) moves.push(line(at, slowFrom, pace.air, "way"), line(at, back, pace.air, "way"));
    moves.push(line(at, (floor * i) / pecks, pace.plunge, "plunge"));
  }
  return [...moves, rise(at, bench.safe)];
}

/**
 * Sinks a hole's mouth: a cone that ends in a point goes straight down till its slope reaches the mouth's edge, a straight
 * bit clears a counterbore. Without a tool a warning; the hole stays.
 */
export function makeSink(
  bench: Bench,
  lying: Lying,
  feature: Feature,
  tool: Tool | undefined,
  { at }: Hole,
  sink: Sink,
): Done {
  if (tool === undefined) return { cuts: [], findings: [leftUnsunk(lying, feature, sink)], withheld: [] };
  const place = lying.to.point(at);
  const floor = sink.angle > 0 ? -sink.d / 2 / Math.tan(sink.angle / 2) : -sink.depth;
  const moves = sinkMoves();
  if (moves === undefined) return { cuts: [], findings: [leftUnsunk(lying, feature, sink)], withheld: [] };
  const operation = { kind: "sink", part: lying.part.id, feature: feature.id, moves, floor } as const;
  return { cuts: [{ tool, operation }], findings: [], withheld: [] };

  function sinkMoves(): readonly Move[] | undefined {
    if (sink.angle > 0 || Math.abs(tool!.d - sink.d) <= sameHole + 1e-6) return drill(bench, tool!, place, floor);
    const centres = centresInside(
      { outer: circle(place, sink.d / 2, featureName(feature.id)), holes: [] },
      tool!.radius,
    );
    return centres.regions && clearArea(bench, tool!, centres.regions[0]!, floor);
  }
}

function leftUnsunk({ part }: Lying, feature: Feature, sink: Sink): Finding {
  const needs = sink.angle > 0 ? "a cone of the screw head's angle that ends in a point" : "a straight bit";
  const facts = { feature: text(featureName(feature.id)), part: text(nameOf(part)), needs: text(needs) };
  return raise(sinkLeft, { at: feature.from, on: [part.id, feature.id], facts });
}
