import { nearestOn } from "../../geometry/distance.js";
import { pointInRegion } from "../../geometry/inside.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Point, Region } from "../../geometry/profile.js";

/** How finely the part is searched for a clear place. */
const steps = 16;

/** A place in the part far from its edges and openings, for its name, and how much is clear around it, mm. */
export function labelPlace(region: Region): { readonly at: Point; readonly clear: number } {
  const { min, max } = extentsOf(region);
  const places = grid(min, max)
    .filter((at) => pointInRegion(region, at))
    .map((at) => ({ at, clear: clearance(region, at) }));
  const start = { at: { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 }, clear: 0 };
  return places.reduce((best, place) => (place.clear > best.clear + 1e-6 ? place : best), start);
}

function grid(min: Point, max: Point): readonly Point[] {
  const at = (low: number, high: number, i: number) => low + ((high - low) * (i + 0.5)) / steps;
  return Array.from({ length: steps * steps }, (_, i) => ({
    x: at(min.x, max.x, i % steps),
    y: at(min.y, max.y, Math.floor(i / steps)),
  }));
}

function clearance(region: Region, at: Point): number {
  const loops = [region.outer, ...region.holes];
  return Math.min(...loops.map((loop) => nearestOn(loop, at)?.distance ?? Number.POSITIVE_INFINITY));
}
