import type { Point } from "../geometry/profile.js";

/** Two parts that measure the same to this are one size of part: no shop cuts finer, mm. */
export const near = 0.005;

export function differ(a: number, b: number): boolean {
  return Math.abs(a - b) > near;
}

export function gap(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function together(a: Point, b: Point): boolean {
  return gap(a, b) < near;
}
