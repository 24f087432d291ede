import type { Point } from "../geometry/profile.js";

/** Holes that share a circle in equal steps. `start`: angle of the first one from the x axis, 0 up to a step, rad. */
export type CirclePattern = { readonly centre: Point; readonly d: number; readonly start: number };

/** Two places closer than this are one on a drawing, mm. */
const near = 0.02;

/**
 * The circle on which three or more points lie in equal steps, if there is one about a point of `centres`. A square of
 * holes lies on a circle too, so a circle counts only about the middle of something else: an opening, a round outline.
 */
export function circlePattern(points: readonly Point[], centres: readonly Point[]): CirclePattern | undefined {
  if (points.length < 3) return undefined;
  const middle = {
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  };
  const centre = centres.find((c) => Math.hypot(c.x - middle.x, c.y - middle.y) < near);
  if (centre === undefined) return undefined;
  const radius = Math.hypot(points[0]!.x - centre.x, points[0]!.y - centre.y);
  const step = (2 * Math.PI) / points.length;
  const angles = points.map((p) => turnOf(Math.atan2(p.y - centre.y, p.x - centre.x), 2 * Math.PI));
  const start = turnOf(angles[0]!, step);
  const sorted = [...angles].sort((a, b) => a - b);
  const fits = points.every((p) => Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radius) < near);
  const even = sorted.every((angle, k) => Math.abs(angle - start - k * step) * radius < near);
  return fits && even ? { centre, d: 2 * radius, start } : undefined;
}

/** The angle from 0 up to but not `full`; noise just below `full` is 0. */
function turnOf(angle: number, full: number): number {
  const rest = ((angle % full) + full) % full;
  return full - rest < 1e-9 ? 0 : rest;
}
