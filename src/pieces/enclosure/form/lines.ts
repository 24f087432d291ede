import { lineWithLine } from "../../../geometry/meet.js";
import type { Point } from "../../../geometry/profile.js";

/** An endless line in the section: a place on it and its unit direction. The inside of the box lies to its left. */
export type Line = { readonly at: Point; readonly along: Point };

export function lineThrough(a: Point, b: Point): Line {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return { at: { x: a.x, y: a.y }, along: { x: (b.x - a.x) / length, y: (b.y - a.y) / length } };
}

/** The same line moved into the box, mm; negative moves it out. */
export function inward({ at, along }: Line, distance: number): Line {
  return { at: { x: at.x - along.y * distance, y: at.y + along.x * distance }, along };
}

/** How far along a line the foot of a point lies from the line's own place, mm. */
export function alongTo({ at, along }: Line, point: Point): number {
  return (point.x - at.x) * along.x + (point.y - at.y) * along.y;
}

/** Sine of the turn between two lines below which they are one run, a corner that is none. */
const flat = 1e-6;

/** Where two lines cross. Of lines that run on into each other, the second's own place: the corner between them. */
export function crossing(one: Line, other: Line): Point {
  const turn = one.along.x * other.along.y - one.along.y * other.along.x;
  if (Math.abs(turn) < flat) return other.at;
  const beyond = ({ at, along }: Line): Point => ({ x: at.x + along.x, y: at.y + along.y });
  return lineWithLine(one.at, beyond(one), other.at, beyond(other))[0] ?? other.at;
}
