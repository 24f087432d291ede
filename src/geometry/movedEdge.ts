import { arcOf, directionAtEnd, directionAtStart, isFlat } from "./arc.js";
import { circleWithCircle, lineWithCircle, lineWithLine } from "./meet.js";
import type { Point, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/** An edge moved sideways. `from` and `to` are its moved ends; `at` is the corner where it ends. */
export type Moved = {
  readonly by: string;
  readonly distance: number;
  readonly bulge: number;
  readonly at: Point;
  readonly from: Point;
  readonly to: Point;
  readonly first: Point;
  readonly last: Point;
  readonly collapsed: boolean;
  readonly center: Point | undefined;
  readonly radius: number;
};

/** The edge from `a` to `b` moved to the right. */
export function moveEdge(a: Vertex, b: Point, distance: number): Moved {
  const first = directionAtStart(a, b);
  const last = directionAtEnd(a, b);
  const arc = isFlat(a, b) ? undefined : arcOf(a, b);
  const radius = arc === undefined ? 0 : arc.radius + Math.sign(a.bulge) * distance;
  const collapsed = arc !== undefined && radius <= tolerance.samePoint;
  const from = collapsed ? arc.center : beside(a, first, distance);
  const to = collapsed ? arc.center : beside(b, last, distance);
  const center = arc?.center;
  return {
    by: a.by,
    distance,
    bulge: arc === undefined ? 0 : a.bulge,
    at: b,
    from,
    to,
    first,
    last,
    collapsed,
    center,
    radius,
  };
}

/** Where the endless lines or whole circles of two moved edges cross, the first at its end, the second at its start. */
export function meetings(one: Moved, two: Moved): Point[] {
  const a = { x: one.to.x + one.last.x, y: one.to.y + one.last.y };
  const b = { x: two.from.x + two.first.x, y: two.from.y + two.first.y };
  if (one.center === undefined && two.center === undefined) return lineWithLine(one.to, a, two.from, b);
  if (one.center === undefined) return lineWithCircle(one.to, a, two.center!, two.radius);
  if (two.center === undefined) return lineWithCircle(two.from, b, one.center, one.radius);
  return circleWithCircle(one.center, one.radius, two.center, two.radius);
}

/** Whether neither edge is cut back where they end and start in `p`. */
export function carriesBothOn(one: Moved, two: Moved, p: Point): boolean {
  const beyond = (p.x - one.to.x) * one.last.x + (p.y - one.to.y) * one.last.y;
  const before = (two.from.x - p.x) * two.first.x + (two.from.y - p.y) * two.first.y;
  return beyond >= -tolerance.samePoint && before >= -tolerance.samePoint;
}

/** The place `distance` to the right of `p`. */
export function beside(p: Point, direction: Point, distance: number): Point {
  return { x: p.x + direction.y * distance, y: p.y - direction.x * distance };
}
