import type { Point, Profile } from "../../../geometry/profile.js";
import { alongTo, crossing, type Line, lineThrough } from "../form/lines.js";

/** A section's edge by its place, as a line with the inside to its left. */
export function edgeLine(section: Profile, i: number): Line {
  return lineThrough(section[i]!, section[(i + 1) % section.length]!);
}

/** Where a line runs through a section: the edges by which it comes in and goes out. */
export type Chord = { readonly start: number; readonly end: number };

/** None where the line misses the section or runs through it more than once. */
export function chordOf(section: Profile, line: Line): Chord | undefined {
  const isLeft = section.map((corner) => leftOf(line, corner));
  const next = (i: number) => isLeft[(i + 1) % section.length]!;
  const crossed = section.flatMap((_, i) => (isLeft[i] === next(i) ? [] : [i]));
  const [one, two] = crossed;
  if (crossed.length !== 2 || one === undefined || two === undefined) return undefined;
  return isLeft[one] ? { start: one, end: two } : { start: two, end: one };
}

/** What of a section lies to the left of a line that runs through it once; the new edge has this name. */
export function leftPart(section: Profile, line: Line, by: string): Profile {
  const n = section.length;
  return section.flatMap((corner, i): Profile => {
    const [here, next] = [leftOf(line, corner), leftOf(line, section[(i + 1) % n]!)];
    const kept = here ? [corner] : [];
    if (here === next) return kept;
    const met = crossing(line, edgeLine(section, i));
    return [...kept, { ...met, bulge: 0, by: here ? by : corner.by }];
  });
}

export const reversed = ({ at, along }: Line): Line => ({ at, along: { x: 0 - along.x, y: 0 - along.y } });

/** The line square to this one through a place so far along it. */
export function squareTo({ at, along }: Line, distance: number): Line {
  return {
    at: { x: at.x + along.x * distance, y: at.y + along.y * distance },
    along: { x: 0 - along.y, y: along.x },
  };
}

/** How far to the left of a line a point lies, mm; negative to its right. */
export function offLine({ at, along }: Line, point: Point): number {
  return along.x * (point.y - at.y) - along.y * (point.x - at.x);
}

const leftOf = (line: Line, point: Point): boolean => offLine(line, point) > 0;

/** Where along a line it meets another, mm from its own place. */
export const meetsAt = (line: Line, other: Line): number => alongTo(line, crossing(line, other));
