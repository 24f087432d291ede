import { extentsOf, isCircle } from "../geometry/measure.js";
import type { Point } from "../geometry/profile.js";
import type { Part } from "../model/part.js";

/** Where a part's positions are measured from: the lower left corner of its outline, or the middle of a round one. */
export type Datum = { readonly at: Point; readonly is: "corner" | "middle" };

export function datumOf(part: Part): Datum {
  const round = isCircle(part.profile.outer);
  return round ? { at: round.center, is: "middle" } : { at: extentsOf(part.profile.outer).min, is: "corner" };
}
