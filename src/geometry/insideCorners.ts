import { arcOf, midpoint } from "./arc.js";
import { cornersOf } from "./corner.js";
import type { Point, Profile, Region } from "./profile.js";

/** A place where a bit must turn into a corner; radius 0 where it is sharp, an arc's own where it is round. */
export type InsideCorner = { readonly at: Point; readonly radius: number; readonly by: string };

/** Every hollow place of a region's edge, as a round bit outside its material finds it. */
export function insideCorners(region: Region): readonly InsideCorner[] {
  return [...hollows(region.outer, -1), ...region.holes.flatMap((hole) => hollows(hole, 1))];
}

function hollows(loop: Profile, towards: 1 | -1): InsideCorner[] {
  const sharp = cornersOf(loop, towards === 1 ? "outside" : "inside");
  const round = loop.flatMap((a, i) => {
    const b = loop[(i + 1) % loop.length]!;
    return a.bulge * towards > 0 ? [{ at: midpoint(a, b), radius: arcOf(a, b).radius, by: a.by }] : [];
  });
  return [...sharp.map(({ at, by }) => ({ at: { x: at.x, y: at.y }, radius: 0, by })), ...round];
}
