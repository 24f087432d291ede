import { isFlat, midpoint, vectorLength } from "./arc.js";
import type { Point, Vertex } from "./profile.js";

/**
 * A directed line or arc of no more than half a turn, with what the crossing of two of them needs at hand.
 * `radius` 0 is a line. `side` tells whose loop it belongs to.
 */
export type Segment = {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly bulge: number;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly by: string;
  readonly side: 0 | 1;
};

/** Adds the edge from `a` to `b`, an arc of more than half a turn as two halves, nothing where it has no length. */
export function pushSegments(into: Segment[], a: Vertex, b: Point, side: 0 | 1): void {
  const bulge = isFlat(a, b) ? 0 : a.bulge;
  if (Math.abs(bulge) > 1 + 1e-9) {
    const middle = midpoint(a, b);
    const half = bulge / (1 + Math.sqrt(1 + bulge * bulge));
    into.push(segment(a.x, a.y, middle.x, middle.y, half, a.by, side));
    into.push(segment(middle.x, middle.y, b.x, b.y, half, a.by, side));
  } else if (a.x !== b.x || a.y !== b.y) {
    into.push(segment(a.x, a.y, b.x, b.y, bulge, a.by, side));
  }
}

export function segment(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  bulge: number,
  by: string,
  side: 0 | 1,
): Segment {
  if (bulge === 0) return { x0, y0, x1, y1, bulge, cx: 0, cy: 0, radius: 0, by, side };
  const k = (1 - bulge * bulge) / (4 * bulge);
  const cx = (x0 + x1) / 2 - (y1 - y0) * k;
  const cy = (y0 + y1) / 2 + (x1 - x0) * k;
  const radius = (vectorLength(x1 - x0, y1 - y0) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { x0, y0, x1, y1, bulge, cx, cy, radius, by, side };
}

/** Writes the box around a segment, `grow` wider on each side, as x0, y0, x1, y1 at `at`. */
export function boxOfSegment(s: Segment, grow: number, into: Float64Array, at: number): void {
  let x0 = Math.min(s.x0, s.x1);
  let y0 = Math.min(s.y0, s.y1);
  let x1 = Math.max(s.x0, s.x1);
  let y1 = Math.max(s.y0, s.y1);
  if (s.radius > 0) {
    // an end may stand a hair beyond the place where noise puts the arc's own extreme: the box holds both
    if (besideSegment(s, s.cx - s.radius, s.cy)) x0 = Math.min(x0, s.cx - s.radius);
    if (besideSegment(s, s.cx + s.radius, s.cy)) x1 = Math.max(x1, s.cx + s.radius);
    if (besideSegment(s, s.cx, s.cy - s.radius)) y0 = Math.min(y0, s.cy - s.radius);
    if (besideSegment(s, s.cx, s.cy + s.radius)) y1 = Math.max(y1, s.cy + s.radius);
  }
  into[at] = x0 - grow;
  into[at + 1] = y0 - grow;
  into[at + 2] = x1 + grow;
  into[at + 3] = y1 + grow;
}

/** Whether a place on the segment's whole circle lies on the bow's side of its chord, that is on the arc. */
export function besideSegment(s: Segment, x: number, y: number): boolean {
  const side = (s.x1 - s.x0) * (y - s.y0) - (s.y1 - s.y0) * (x - s.x0);
  return s.bulge > 0 ? side <= 0 : side >= 0;
}

/** How far along its chord a place lies, from 0 to the chord's square; it grows all along an arc of up to half a turn. */
export function alongSegment(s: Segment, x: number, y: number): number {
  return (x - s.x0) * (s.x1 - s.x0) + (y - s.y0) * (s.y1 - s.y0);
}

/** Bulge of the part of the segment between two of its places, given in its own direction. */
export function bulgeBetween(s: Segment, ax: number, ay: number, bx: number, by: number): number {
  if (s.radius === 0) return 0;
  // tan(sweep / 4) is the half chord over radius plus the chord's distance from the centre: sound up to half a turn
  const half = vectorLength(bx - ax, by - ay) / 2;
  const off = vectorLength(ax + bx - 2 * s.cx, ay + by - 2 * s.cy) / 2;
  const bulge = half / (s.radius + off);
  return s.bulge > 0 ? bulge : -bulge;
}
