import type { Point } from "../../geometry/profile.js";
import { cosSin } from "../../geometry/transform.js";

/** A boundary as straight pieces, the outer counter-clockwise, holes clockwise: material lies on the left. mm. */
export type Loop = readonly Point[];

/** Area that the loops enclose, holes taken off. */
export function areaOfLoops(loops: readonly Loop[]): number {
  return loops.reduce((sum, loop) => sum + areaOfLoop(loop), 0);
}

/** Positive where the loop runs counter-clockwise. */
export function areaOfLoop(loop: Loop): number {
  const o = loop[0];
  if (o === undefined) return 0;
  let twice = 0;
  for (let i = 0; i < loop.length; i++) {
    const a = loop[i]!;
    const b = loop[(i + 1) % loop.length]!;
    twice += (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  }
  return twice / 2;
}

export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

export function boxOfLoops(loops: readonly Loop[]): Box {
  let x0 = Number.POSITIVE_INFINITY;
  let y0 = Number.POSITIVE_INFINITY;
  let x1 = Number.NEGATIVE_INFINITY;
  let y1 = Number.NEGATIVE_INFINITY;
  for (const loop of loops)
    for (const p of loop) {
      if (p.x < x0) x0 = p.x;
      if (p.x > x1) x1 = p.x;
      if (p.y < y0) y0 = p.y;
      if (p.y > y1) y1 = p.y;
    }
  return { x0, y0, x1, y1 };
}

/** Turned about the origin. Quarter turns are exact: a rectangle stays one. */
export function turnLoops(loops: readonly Loop[], turn: number): Loop[] {
  const [c, s] = cosSin(turn);
  return loops.map((loop) => loop.map((p) => ({ x: c * p.x - s * p.y, y: s * p.x + c * p.y })));
}

export function moveLoops(loops: readonly Loop[], dx: number, dy: number): Loop[] {
  return loops.map((loop) => loop.map((p) => ({ x: p.x + dx, y: p.y + dy })));
}

/**
 * The loops drawn in by a hair: every edge moves into the material by `hair`, so that two shapes which only touch lie
 * two hairs apart and noise cannot make them collide.
 */
export function drawnIn(loops: readonly Loop[], hair: number): Loop[] {
  return loops.map((loop) =>
    loop.map((p, i) => {
      const a = unit(loop[(i + loop.length - 1) % loop.length]!, p);
      const b = unit(p, loop[(i + 1) % loop.length]!);
      // both edges move left by one hair: the corner moves along the sum of their normals
      const scale = hair / Math.max(0.1, 1 + a.x * b.x + a.y * b.y);
      return { x: p.x - (a.y + b.y) * scale, y: p.y + (a.x + b.x) * scale };
    }),
  );
}

function unit(a: Point, b: Point): Point {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

/** Corners of the convex hull, counter-clockwise (Andrew's monotone chain, Inf. Proc. Letters 9, 1979). */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (run: readonly Point[]) => {
    const chain: Point[] = [];
    for (const p of run) {
      while (chain.length >= 2 && !turnsLeft(chain[chain.length - 2]!, chain[chain.length - 1]!, p)) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turnsLeft = (a: Point, b: Point, c: Point): boolean => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;
