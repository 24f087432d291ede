import { dot, type Vector } from "./frame.js";

/**
 * The least distance between two straight pieces in space, mm.
 *
 * Source: C. Ericson, "Real-Time Collision Detection", 2005, section 5.1.9, closest points of two segments; from memory.
 */
export function distanceOfSegments(p: Vector, q: Vector, r: Vector, s: Vector): number {
  const u = minus(q, p);
  const v = minus(s, r);
  const w = minus(p, r);
  const [a, b, c, d, e] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const square = a * c - b * b;
  // Where they are parallel, or the second is a point, any start will do: the next two lines put it right.
  let along = square > 1e-12 * a * c ? clamped((b * e - c * d) / square) : 0;
  const across = c > 0 ? clamped((b * along + e) / c) : 0;
  along = a > 0 ? clamped((b * across - d) / a) : 0;
  return Math.hypot(...[0, 1, 2].map((i) => w[i]! + along * u[i]! - across * v[i]!));
}

function clamped(t: number): number {
  return Math.min(1, Math.max(0, t));
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
