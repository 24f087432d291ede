import { areaOf, both, boxOf, type Point, type Polygons, separate } from "./polygons.js";
import { leftAt, type Stock } from "./stock.js";
import type { Swept } from "./swept.js";

/** A place where the sheet is not as it should be. mm, mm². */
export type Spot = { readonly name: string; readonly depth: number; readonly area: number; readonly at: Point };

/** Smaller than a grain of dust: what the rounding of the polygon library leaves along an edge, mm². */
const nothing = 1e-3;

/** Just below the top and just below every floor, mm. */
const under = 0.01;

/** Where the cut has taken more of a part than it may: just below its top and below each of its floors, as between them
 *  what may be taken stays as it is and the cut only grows smaller. */
export function lossesOf(stock: Stock, swept: Swept, thickness: number, chord: number): readonly Spot[] {
  const near = boxOf(stock.blank);
  const depths = [0, ...new Set(stock.blind.map(({ depth }) => depth))].map((depth) => depth + under);
  return depths
    .filter((depth) => depth < thickness)
    .flatMap((depth) => spotsOf(stock.name, depth, both(swept(depth, near), leftAt(stock, depth, chord))));
}

export function spotsOf(name: string, depth: number, polygons: Polygons): readonly Spot[] {
  return separate(polygons)
    .map((area) => ({ name, depth, area: areaOf(area), at: area[0]![0]! }))
    .filter(({ area }) => area > nothing);
}
