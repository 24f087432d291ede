import { isCircle } from "../geometry/measure.js";
import type { Point } from "../geometry/profile.js";
import type { Part } from "../model/part.js";
import { gap, near } from "./near.js";

/** A turn about the origin, then a shift. */
export type Motion = { readonly cos: number; readonly sin: number; readonly dx: number; readonly dy: number };

/**
 * Every motion that could lay `a` on `b`: its first marked place and the longest way from there to another must fall on
 * two places of `b`. Marked are the outline's corners and the middles of holes: a round outline has no corner of its own.
 */
export function motions(a: Part, b: Part): readonly Motion[] {
  const placesA = placesOf(a);
  const placesB = placesOf(b);
  if (placesA.length !== placesB.length) return [];
  const [first, ...rest] = placesA;
  if (first === undefined) return [{ cos: 1, sin: 0, dx: 0, dy: 0 }];
  const second = rest.reduce((far, p) => (gap(first, p) > gap(first, far) + near ? p : far), first);
  const reach = gap(first, second);
  if (reach < near) return placesB.map((p) => ({ cos: 1, sin: 0, dx: p.x - first.x, dy: p.y - first.y }));
  return placesB.flatMap((p) =>
    placesB.filter((q) => Math.abs(gap(p, q) - reach) < near).map((q) => motionOnto(first, second, p, q)),
  );
}

function placesOf(part: Part): readonly Point[] {
  const round = isCircle(part.profile.outer);
  const corners = round ? [round.center] : part.profile.outer;
  const middles = part.features.flatMap(({ cut }) => (cut.kind === "hole" ? [cut.at] : []));
  const openings = part.profile.holes.flatMap((hole) => (isCircle(hole) ? [] : hole));
  return [...corners, ...middles, ...openings];
}

function motionOnto(first: Point, second: Point, p: Point, q: Point): Motion {
  const u = { x: second.x - first.x, y: second.y - first.y };
  const v = { x: q.x - p.x, y: q.y - p.y };
  const length = Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y);
  const cos = (u.x * v.x + u.y * v.y) / length;
  const sin = (u.x * v.y - u.y * v.x) / length;
  return { cos, sin, dx: p.x - (first.x * cos - first.y * sin), dy: p.y - (first.x * sin + first.y * cos) };
}

export function moved(p: Point, { cos, sin, dx, dy }: Motion): Point {
  return { x: p.x * cos - p.y * sin + dx, y: p.x * sin + p.y * cos + dy };
}
