import { offsetEach } from "../../geometry/offset.js";
import type { Profile } from "../../geometry/profile.js";
import type { Around } from "../../model/piece.js";
import { rules } from "../../shop/rules.js";
import { addedAt, type PlateCovering } from "./covering.js";
import type { PlateSpec } from "./schema.js";

/**
 * The plate's outline as cut, before notches: the surveyed outline, side by side cut back by its gap and by the
 * covering that goes over it. Gap as cut = reveal + this edge's covering; the vehicle's side is taken as it was
 * measured. Several profiles, or none, where the space is too narrow for that.
 */
export function plateOutline(
  spec: PlateSpec,
  covering: PlateCovering | undefined,
  { job }: Around,
): readonly Profile[] {
  return offsetEach(job.space.outline, (by) => -cutBack(by, spec, covering));
}

/** The gap one will see at a side, mm. An arc that joins two sides keeps the wider of their gaps. */
export function gapAt(edge: string, spec: PlateSpec): number {
  return Math.max(...edge.split("|").map((side) => spec.sides?.[side]?.gap ?? spec.gap ?? rules.plateGap.value));
}

function cutBack(edge: string, spec: PlateSpec, covering: PlateCovering | undefined): number {
  return gapAt(edge, spec) + addedAt(edge, covering);
}
