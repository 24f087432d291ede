import { vectorLength } from "./arc.js";
import { besideSegment, type Segment } from "./segment.js";
import { tolerance } from "./tolerance.js";

/** Called with a place that both segments share, but for noise. */
export type Shared = (x: number, y: number) => void;

/**
 * Every place where two segments must be cut so that afterwards they share only ends: where they cross, where they
 * touch, and where an end of one lies on the other, which also bounds the stretch that they run along together.
 *
 * 1. Ends within `samePoint` of the other segment.
 * 2. Crossings of the endless curves that lie on both segments. Curves that cross no deeper than `touch` are tangent and
 *    share one place, the foot: two crossings of so flat a lens would be lost to noise along the curve.
 *
 * Line and circle by the foot of the centre, circles by the line of centres (textbook).
 */
export function sharedPlaces(s: Segment, t: Segment, shared: Shared): void {
  endsOn(s, t, shared);
  endsOn(t, s, shared);
  if (s.radius === 0 && t.radius === 0) crossLines(s, t, shared);
  else if (s.radius === 0) crossLineArc(s, t, shared);
  else if (t.radius === 0) crossLineArc(t, s, shared);
  else crossArcs(s, t, shared);
}

function endsOn(s: Segment, t: Segment, shared: Shared): void {
  if (isOn(t, s.x0, s.y0)) shared(s.x0, s.y0);
  if (isOn(t, s.x1, s.y1)) shared(s.x1, s.y1);
}

/** Whether a place lies on the segment between its ends, but for noise. */
function isOn(t: Segment, x: number, y: number): boolean {
  const dx = t.x1 - t.x0;
  const dy = t.y1 - t.y0;
  if (t.radius > 0) {
    return Math.abs(vectorLength(x - t.cx, y - t.cy) - t.radius) <= tolerance.samePoint && besideSegment(t, x, y);
  }
  const square = dx * dx + dy * dy;
  const along = (x - t.x0) * dx + (y - t.y0) * dy;
  if (along < 0 || along > square) return false;
  const cross = dx * (y - t.y0) - dy * (x - t.x0);
  return cross * cross <= tolerance.samePoint * tolerance.samePoint * square;
}

/** By how far the ends of each lie off the other's line. Where both ends lie on it, the lines run along each other, and
 *  what they share is bounded by ends: their crossing would be noise divided by noise. */
function crossLines(s: Segment, t: Segment, shared: Shared): void {
  const ux = s.x1 - s.x0;
  const uy = s.y1 - s.y0;
  const vx = t.x1 - t.x0;
  const vy = t.y1 - t.y0;
  const t0 = ux * (t.y0 - s.y0) - uy * (t.x0 - s.x0);
  const t1 = ux * (t.y1 - s.y0) - uy * (t.x1 - s.x0);
  const s0 = vx * (s.y0 - t.y0) - vy * (s.x0 - t.x0);
  const s1 = vx * (s.y1 - t.y0) - vy * (s.x1 - t.x0);
  if (t0 * t1 > 0 || s0 * s1 > 0) return;
  const off = tolerance.samePoint;
  if (Math.max(Math.abs(t0), Math.abs(t1)) <= off * vectorLength(ux, uy)) return;
  if (Math.max(Math.abs(s0), Math.abs(s1)) <= off * vectorLength(vx, vy)) return;
  const a = s0 / (s0 - s1);
  shared(s.x0 + ux * a, s.y0 + uy * a);
}

function crossLineArc(line: Segment, arc: Segment, shared: Shared): void {
  const dx = line.x1 - line.x0;
  const dy = line.y1 - line.y0;
  const length = vectorLength(dx, dy);
  const ux = dx / length;
  const uy = dy / length;
  const wx = arc.cx - line.x0;
  const wy = arc.cy - line.y0;
  const off = wx * uy - wy * ux;
  const depth = arc.radius - Math.abs(off);
  const touch = touchOf(arc.radius);
  if (depth < -touch) return;
  const foot = wx * ux + wy * uy;
  const half = depth <= touch ? 0 : Math.sqrt(depth * (arc.radius + Math.abs(off)));
  for (const at of half === 0 ? [foot] : [foot - half, foot + half]) {
    if (at < 0 || at > length) continue;
    const x = line.x0 + ux * at;
    const y = line.y0 + uy * at;
    if (besideSegment(arc, x, y)) shared(x, y);
  }
}

function crossArcs(s: Segment, t: Segment, shared: Shared): void {
  const dx = t.cx - s.cx;
  const dy = t.cy - s.cy;
  const between = vectorLength(dx, dy);
  const touch = touchOf(Math.max(s.radius, t.radius));
  const apart = between - (s.radius + t.radius);
  const within = Math.abs(s.radius - t.radius) - between;
  if (between <= touch || apart > touch || within > touch) return;
  const ux = dx / between;
  const uy = dy / between;
  const report = (along: number, half: number) => {
    const x = s.cx + ux * along - uy * half;
    const y = s.cy + uy * along + ux * half;
    if (besideSegment(s, x, y) && besideSegment(t, x, y)) shared(x, y);
  };
  if (apart >= -touch || within >= -touch) {
    report(apart >= -touch || s.radius > t.radius ? s.radius : -s.radius, 0);
    return;
  }
  const along = (between + ((s.radius - t.radius) * (s.radius + t.radius)) / between) / 2;
  const half = Math.sqrt(Math.max(0, (s.radius - along) * (s.radius + along)));
  report(along, half);
  report(along, -half);
}

/** Noise grows with the radius. */
function touchOf(radius: number): number {
  return tolerance.touch + 4e-15 * radius;
}
