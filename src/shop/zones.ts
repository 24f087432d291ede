import { type ZodType, z } from "zod";
import type { Profile } from "../geometry/profile.js";
import { circle, rectangle } from "../geometry/shapes.js";
import type { Door } from "../input/door.js";
import { placesSchema } from "../input/outline.js";
import type { KeptClear } from "../model/shop.js";

/** Keys under which zones stand, and what one of them is called. */
const kinds = { clamps: "clamp", knots: "knot", pins: "pin", holes: "hole" } as const;
const across = { min: 0.5, max: 3000 };

/** The keys of a row for what parts keep clear of: round places, rectangles about their middle, or corners. */
export function clearKeys(door: Door) {
  return {
    clamps: zones(door, "clamps").optional(),
    knots: zones(door, "knots").optional(),
    pins: zones(door, "pins").optional(),
    holes: zones(door, "holes").optional(),
  };
}

function zones(door: Door, key: keyof typeof kinds): ZodType<readonly Profile[]> {
  const at = () => door.point().describe("The middle: [x, y], from the lower left corner.");
  const by = kinds[key];
  const round = z
    .strictObject({ at: at(), across: door.length(across).describe("Diameter of a round one.") })
    .transform(({ at: [x, y], across: d }) => circle({ x, y }, d / 2, by));
  const square = z
    .strictObject({ at: at(), size: door.size(across).describe("Length x width of a rectangular one.") })
    .transform(({ at: [x, y], size: [l, w] }) => rectangle(x - l / 2, y - w / 2, x + l / 2, y + w / 2, by));
  const shape = z
    .strictObject({ outline: placesSchema(door).describe("Its corners: [[x, y], [x, y], ...].") })
    .transform(({ outline }): Profile => outline.map((vertex) => ({ ...vertex, by })));
  return z.array(z.union([round, square, shape])).max(100);
}

/** All of them in one list; each edge says by its name what it belongs to. */
export function zonesOf(row: KeptClear): readonly Profile[] {
  return [...(row.clamps ?? []), ...(row.knots ?? []), ...(row.pins ?? []), ...(row.holes ?? [])];
}

/** The same keys with every outline changed. */
export function clearMapped(row: KeptClear, change: (zone: Profile) => Profile): KeptClear {
  return {
    ...(row.clamps && { clamps: row.clamps.map(change) }),
    ...(row.knots && { knots: row.knots.map(change) }),
    ...(row.pins && { pins: row.pins.map(change) }),
    ...(row.holes && { holes: row.holes.map(change) }),
  };
}
