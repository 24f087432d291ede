import { arcOf, directionAtEnd, directionAtStart, midpoint } from "../geometry/arc.js";
import type { Point, Profile, Region } from "../geometry/profile.js";
import { tolerance } from "../geometry/tolerance.js";

export type InsideCorner = { readonly at: Point; readonly radius: number; readonly by: string };

/** Where a round bit outside the region's material must turn into a corner, with the corner's radius, mm; 0 is sharp. */
export function insideCorners({ outer, holes }: Region): readonly InsideCorner[] {
  return [...cornersOfLoop(outer, -1), ...holes.flatMap((hole) => cornersOfLoop(hole, 1))];
}

function cornersOfLoop(loop: Profile, side: 1 | -1): InsideCorner[] {
  return loop.flatMap((v, i): InsideCorner[] => {
    const before = loop[(i + loop.length - 1) % loop.length]!;
    const next = loop[(i + 1) % loop.length]!;
    const arrive = directionAtEnd(before, v);
    const leave = directionAtStart(v, next);
    const sharp = side * (arrive.x * leave.y - arrive.y * leave.x) > tolerance.smooth;
    const by = before.by === v.by ? v.by : `${before.by}|${v.by}`;
    const corner = sharp ? [{ at: { x: v.x, y: v.y }, radius: 0, by }] : [];
    const arc = side * v.bulge > 0 ? [{ at: midpoint(v, next), radius: arcOf(v, next).radius, by: v.by }] : [];
    return [...corner, ...arc];
  });
}
