import type { Point } from "./profile.js";

/** The place where two endless lines cross; none where they are parallel. */
export function lineWithLine(a: Point, b: Point, c: Point, d: Point): Point[] {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const vx = d.x - c.x;
  const vy = d.y - c.y;
  const turn = ux * vy - uy * vx;
  if (turn === 0) return [];
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / turn;
  return [{ x: a.x + ux * t, y: a.y + uy * t }];
}

/** The places where an endless line cuts a circle: from the foot of its centre, half a chord each way. */
export function lineWithCircle(a: Point, b: Point, center: Point, radius: number): Point[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0) return [];
  const ux = (b.x - a.x) / length;
  const uy = (b.y - a.y) / length;
  const off = (center.x - a.x) * uy - (center.y - a.y) * ux;
  const square = (radius - off) * (radius + off);
  if (square < 0) return [];
  const foot = { x: center.x - off * uy, y: center.y + off * ux };
  const half = Math.sqrt(square);
  return [
    { x: foot.x - ux * half, y: foot.y - uy * half },
    { x: foot.x + ux * half, y: foot.y + uy * half },
  ];
}

/** The places where two circles cross; none where they lie apart, one in the other, or are the same. */
export function circleWithCircle(c: Point, r: number, d: Point, s: number): Point[] {
  const length = Math.hypot(d.x - c.x, d.y - c.y);
  if (length === 0) return [];
  const along = (length + ((r - s) * (r + s)) / length) / 2;
  const square = (r - along) * (r + along);
  if (square < 0) return [];
  const ux = (d.x - c.x) / length;
  const uy = (d.y - c.y) / length;
  const half = Math.sqrt(square);
  return [
    { x: c.x + ux * along + uy * half, y: c.y + uy * along - ux * half },
    { x: c.x + ux * along - uy * half, y: c.y + uy * along + ux * half },
  ];
}
