import type { Point, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/** An arc: where it starts, rad from the x axis, and how far it turns; a positive sweep runs counter-clockwise. */
export type Arc = { readonly center: Point; readonly radius: number; readonly start: number; readonly sweep: number };

/**
 * The arc that leaves `a` and ends in `b`. Only for a curved edge (bulge not 0) whose ends are two places.
 * Source: bulge = tan(sweep / 4), r = chord (1 + bulge^2) / (4 |bulge|), DXF Reference, "LWPOLYLINE", code 42.
 */
export function arcOf(a: Vertex, b: Point): Arc {
  const toCenter = (1 - a.bulge * a.bulge) / (4 * a.bulge);
  const center = {
    x: (a.x + b.x) / 2 - (b.y - a.y) * toCenter,
    y: (a.y + b.y) / 2 + (b.x - a.x) * toCenter,
  };
  return {
    center,
    radius: radiusOf(vectorLength(b.x - a.x, b.y - a.y), a.bulge),
    start: Math.atan2(a.y - center.y, a.x - center.x),
    sweep: sweepOfBulge(a.bulge),
  };
}

/** Whether the edge is a line, or so flat an arc that its centre would drown in noise: it stands off its chord by less
 *  than anyone can cut. */
export function isFlat(a: Vertex, b: Point): boolean {
  if (a.bulge === 0) return true;
  const chord = vectorLength(b.x - a.x, b.y - a.y);
  return sagittaOf(chord, a.bulge) <= Math.max(tolerance.samePoint, tolerance.flat * chord);
}

export function bulgeOfSweep(sweep: number): number {
  return Math.tan(sweep / 4);
}

export function sweepOfBulge(bulge: number): number {
  return 4 * Math.atan(bulge);
}

/** Radius of an arc over this chord; endless where it is straight. */
export function radiusOf(chord: number, bulge: number): number {
  return bulge === 0 ? Number.POSITIVE_INFINITY : (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
}

/** How far the arc stands off its chord, mm, never negative. */
export function sagittaOf(chord: number, bulge: number): number {
  return (Math.abs(bulge) * chord) / 2;
}

/**
 * Bulge of the arc from `a` to `b` that passes through `mid`; 0 where the three lie on a line.
 * Own derivation: the angle at `mid` over the chord is half the arc that is left, so the sweep is 2 pi less twice it.
 */
export function bulgeThrough(a: Point, mid: Point, b: Point): number {
  const ux = a.x - mid.x;
  const uy = a.y - mid.y;
  const vx = b.x - mid.x;
  const vy = b.y - mid.y;
  const angle = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  if (angle === 0) return 0;
  return Math.tan((angle - Math.sign(angle) * Math.PI) / 2);
}

/** Bulge of the short way round a circle from one of its places to another. */
export function shortWay(center: Point, radius: number, a: Point, b: Point): number {
  const cross = (a.x - center.x) * (b.y - center.y) - (a.y - center.y) * (b.x - center.x);
  const half = vectorLength(b.x - a.x, b.y - a.y) / 2;
  const off = vectorLength(a.x + b.x - 2 * center.x, a.y + b.y - 2 * center.y) / 2;
  return (Math.sign(cross) * half) / (radius + off);
}

/** The place halfway along the edge that leaves `a` and ends in `b`. */
export function midpoint(a: Vertex, b: Point): Point {
  return {
    x: (a.x + b.x) / 2 + ((b.y - a.y) * a.bulge) / 2,
    y: (a.y + b.y) / 2 - ((b.x - a.x) * a.bulge) / 2,
  };
}

/** A unit vector along the edge where it leaves `a`. */
export function directionAtStart(a: Vertex, b: Point): Point {
  return turnedChord(a, b, -a.bulge);
}

/** A unit vector along the edge where it arrives in `b`. */
export function directionAtEnd(a: Vertex, b: Point): Point {
  return turnedChord(a, b, a.bulge);
}

/** The chord's direction turned by half the sweep of a bulge: cos and sin of it by the half-angle formulas. */
function turnedChord(a: Point, b: Point, bulge: number): Point {
  const length = vectorLength(b.x - a.x, b.y - a.y) || 1;
  const x = (b.x - a.x) / length;
  const y = (b.y - a.y) / length;
  const square = bulge * bulge;
  const c = (1 - square) / (1 + square);
  const s = (2 * bulge) / (1 + square);
  return { x: x * c - y * s, y: x * s + y * c };
}

/** Length of a vector of workshop size. Math.hypot guards against overflow, and takes several times as long. */
export function vectorLength(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy);
}
