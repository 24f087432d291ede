import { difference } from "../geometry/boolean.js";
import { offsetRegion } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import { rectangle } from "../geometry/shapes.js";

/** A sheet or offcut as far as parts may lie on it. mm. */
export type Usable = {
  readonly length: number;
  readonly width: number;
  readonly trim: number;
  readonly outline?: Profile;
};

/** All there is of it: its outline, or the rectangle. */
export function boardOf({ length, width, outline }: Usable): Profile {
  return outline ?? rectangle(0, 0, length, width, "edge");
}

/** What lies within the trim and beside the zones: none, one or several regions. */
export function clearArea(board: Usable, zones: readonly Profile[]): readonly Region[] {
  const within = withinTrim(board);
  if (zones.length === 0) return within;
  const taken = zones.map((outer): Region => ({ outer, holes: [] }));
  return within.flatMap((region) => difference(region, taken));
}

function withinTrim(board: Usable): readonly Region[] {
  const { length, width, trim, outline } = board;
  if (outline !== undefined) {
    const whole = { outer: outline, holes: [] };
    return trim > 0 ? offsetRegion(whole, -trim) : [whole];
  }
  if (length <= 2 * trim || width <= 2 * trim) return [];
  return [{ outer: rectangle(trim, trim, length - trim, width - trim, "trim"), holes: [] }];
}
