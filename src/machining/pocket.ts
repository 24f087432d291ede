import { difference } from "../geometry/boolean.js";
import { offsetProfile } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import type { Feature } from "../model/part.js";
import type { WorkKind } from "../model/program.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { centresInside } from "./centres.js";
import { clearArea } from "./clearing.js";
import { faultOf, tooShort, withheld } from "./faults.js";

/**
 * Clears an area to a depth, with its islands. Where the board is cut away altogether later on, its middle is left
 * standing: `openings` are the loops of such cuts.
 */
export function clearPocket(
  bench: Bench,
  lying: Lying,
  feature: Feature,
  tool: Tool,
  { area, depth, kind, openings }: Pocket,
): Done {
  const short = tooShort(lying, feature, tool, depth);
  if (short) return withheld(feature, short);
  const whole = centresInside(area, tool.radius);
  if (whole.regions === undefined) return withheld(feature, faultOf(lying, feature, tool, whole));
  const spared = openings.flatMap((loop) => offsetProfile(loop, -sparedBy * tool.d));
  const middles = spared.map((outer): Region => ({ outer, holes: [] }));
  // no bit can fail to go round what it need not touch: a doubt here only means that the whole is cleared
  const partly = middles.length > 0 ? centresInsideAll(difference(area, middles), tool.radius) : undefined;
  const cuts = (partly ?? whole.regions).map((region) => ({
    tool,
    operation: {
      kind,
      part: lying.part.id,
      feature: feature.id,
      moves: clearArea(bench, tool, region, -depth),
      floor: -depth,
    },
  }));
  return { cuts, findings: [], withheld: [] };
}

export type Pocket = {
  readonly area: Region;
  readonly depth: number;
  readonly kind: WorkKind;
  readonly openings: readonly Profile[];
};

/** How far inside an opening's edge the board may stay as it is, in widths of the bit: its own cut then runs clear. */
const sparedBy = 1.1;

function centresInsideAll(areas: readonly Region[], radius: number): readonly Region[] | undefined {
  const centres = areas.map((area) => centresInside(area, radius));
  return centres.every((each) => each.regions !== undefined) ? centres.flatMap((each) => each.regions) : undefined;
}
