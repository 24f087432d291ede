import type { Vector } from "./frame.js";

/**
 * How much wider and higher an opening would have to be for some face of a block to go through; 0: it goes.
 * Units: mm.
 */
export function missingThrough([a, b, c]: Vector, width: number, height: number): number {
  const faces = [
    [a, b],
    [a, c],
    [b, c],
  ] as const;
  return Math.min(...faces.map(([p, q]) => missingFor(p, q, width, height)));
}

/** By halving: a rectangle that fits some opening fits every larger one. */
function missingFor(p: number, q: number, width: number, height: number): number {
  if (fitsThrough(p, q, width, height)) return 0;
  let [little, enough] = [0, Math.max(p, q)];
  while (enough - little > 0.01) {
    const half = (little + enough) / 2;
    if (fitsThrough(p, q, width + half, height + half)) enough = half;
    else little = half;
  }
  return enough;
}

/**
 * Whether a rectangle p x q fits in one of width x height, turned as it may be.
 * Source: W. B. Carver, "Solution to problem E 1225", American Mathematical Monthly 64, 1957; from memory: with p >= q
 * and a >= b it fits if p <= a and q <= b, or if p > a and b >= (2 p q a + (p2 - q2) sqrt(p2 + q2 - a2)) / (p2 + q2).
 */
export function fitsThrough(oneSide: number, otherSide: number, width: number, height: number): boolean {
  const [p, q] = [Math.max(oneSide, otherSide), Math.min(oneSide, otherSide)];
  const [a, b] = [Math.max(width, height), Math.min(width, height)];
  if (q > b) return false;
  if (p <= a) return true;
  const square = p * p + q * q;
  return b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(square - a * a)) / square;
}
