import { arcOf } from "./arc.js";
import { eachEdge } from "./measure.js";
import type { Point, Profile } from "./profile.js";

/**
 * How often the loop runs round a point that is not on it, counter-clockwise. The polygon of its chords by crossings to
 * the right (D. Sunday, "Inclusion of a Point in a Polygon"; from memory), and one more or less for each bow between an
 * arc and its chord that holds the point.
 */
export function winding(profile: Profile, p: Point): number {
  let turns = 0;
  eachEdge(profile, (a, b) => {
    const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    if (a.y <= p.y && b.y > p.y && side > 0) turns++;
    else if (a.y > p.y && b.y <= p.y && side < 0) turns--;
    if (a.bulge === 0) return;
    // on the chord the bow must take the side that the crossings took
    const left = side > 0 || (side === 0 && (b.y < a.y || (b.y === a.y && b.x > a.x)));
    if (left === a.bulge > 0) return;
    const { center, radius } = arcOf(a, b);
    if (Math.hypot(p.x - center.x, p.y - center.y) < radius) turns += Math.sign(a.bulge);
  });
  return turns;
}
