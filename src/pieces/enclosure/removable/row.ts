import type { Point, Profile } from "../../../geometry/profile.js";
import { rules } from "../../../shop/rules.js";
import { edgeLine, offLine } from "../chambers/section.js";
import { crossing, inward, type Line, lineThrough } from "../form/lines.js";

/**
 * Distances along a row at which bolts stand: near its ends, then evenly, no further apart than asked. A row too short
 * for two takes one in its middle, one too short for its insert's own room takes none. mm.
 */
export function alongRow(length: number, every: number, room: number): readonly number[] {
  const end = Math.max(rules.boltToEnd.value, room);
  if (length < 2 * room) return [];
  if (length < 3 * end) return [length / 2];
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / every - 1e-9));
  return Array.from({ length: gaps + 1 }, (_, i) => end + ((length - 2 * end) * i) / gaps);
}

/** The part of a line, so far in from a strip's inner edge, that lies in its outline: its two ends. */
export function middleOf(outline: Profile, inner: string, off: number): readonly [Point, Point] | undefined {
  const i = outline.findIndex(({ by }) => by === inner);
  if (i < 0) return undefined;
  const line = inward(edgeLine(outline, i), off);
  const ends = outline.flatMap((a, k): readonly Point[] => {
    const b = outline[(k + 1) % outline.length]!;
    const crosses = offLine(line, a) > 0 !== offLine(line, b) > 0;
    return crosses ? [crossing(line, lineThrough(a, b))] : [];
  });
  const [a, b] = ends;
  if (a === undefined || b === undefined) return undefined;
  return along(line, a) < along(line, b) ? [a, b] : [b, a];
}

const along = ({ at, along: way }: Line, point: Point) => (point.x - at.x) * way.x + (point.y - at.y) * way.y;
