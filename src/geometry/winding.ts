import { arcOf, isFlat } from "./arc.js";
import { eachEdge } from "./measure.js";
import type { Point, Profile, Vertex } from "./profile.js";

/** How often the loop runs round a point that is not on it, counter-clockwise. */
export function winding(profile: Profile, p: Point): number {
  let turns = 0;
  eachEdge(profile, (a, b) => {
    turns += turnsPastEdge(a, b, p);
  });
  return turns;
}

/**
 * What the edge from `a` to `b` adds to the winding around `p`: its chord 1 or -1 where it crosses the ray to the right
 * (D. Sunday, "Inclusion of a Point in a Polygon"; from memory), the bow between arc and chord once more where it holds
 * the point.
 */
export function turnsPastEdge(a: Vertex, b: Point, p: Point): number {
  const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  let turns = 0;
  if (a.y <= p.y && b.y > p.y && side > 0) turns = 1;
  else if (a.y > p.y && b.y <= p.y && side < 0) turns = -1;
  if (isFlat(a, b)) return turns;
  // on the chord the bow must take the side that the crossing took
  const left = side > 0 || (side === 0 && (b.y < a.y || (b.y === a.y && b.x > a.x)));
  if (left === a.bulge > 0) return turns;
  const { center, radius } = arcOf(a, b);
  return Math.hypot(p.x - center.x, p.y - center.y) < radius ? turns + Math.sign(a.bulge) : turns;
}
