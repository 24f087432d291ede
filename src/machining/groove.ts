import { offsetProfile, widen } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import type { Feature, Cut as PartCut } from "../model/part.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { cannot, tooShort, withheld } from "./faults.js";
import { alongPath, roundPath } from "./lines.js";
import { clearPocket } from "./pocket.js";
import { directed } from "./round.js";

type Groove = Extract<PartCut, { kind: "groove" }>;

/** A bit within this of a groove's width cuts it in one: mm, common practice, no source. */
const sameWidth = 0.02;

/**
 * Cuts a groove: along its middle where the bit is as wide as it is, else both its sides and what is between them. Its
 * ends are round, half the groove's width beyond the ends of its middle.
 */
export function cutGroove(bench: Bench, lying: Lying, feature: Feature, tool: Tool, groove: Groove): Done {
  const { width, depth, closed } = groove;
  const path = lying.to.path(groove.path);
  if (tool.d > width + sameWidth) return cannot(lying, feature, tool, "it is wider than the groove");
  const short = tooShort(lying, feature, tool, depth);
  if (short) return withheld(feature, short);
  if (tool.d < width - sameWidth) {
    const areas = closed ? bandsAlong(path, width) : widen(path, width / 2);
    const done = areas.map((area) =>
      clearPocket(bench, lying, feature, tool, { area, depth, kind: "groove", openings: [] }),
    );
    const left = done.find((one) => one.withheld.length > 0);
    return left ?? { cuts: done.flatMap((one) => one.cuts), findings: [], withheld: [] };
  }
  const moves = closed
    ? roundPath(bench, tool, directed(path, "outside", bench.cnc.direction), depth)
    : alongPath(bench, tool, path, depth);
  const operation = { kind: "groove", part: lying.part.id, feature: feature.id, moves, floor: -depth } as const;
  return { cuts: [{ tool, operation }], findings: [], withheld: [] };
}

/** The area on both sides of a closed middle. */
function bandsAlong(middle: Profile, width: number): readonly Region[] {
  const holes = offsetProfile(middle, -width / 2);
  return offsetProfile(middle, width / 2).map((outer) => ({ outer, holes }));
}
