import { compose, shifted } from "../../../geometry/frame.js";
import { areaOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import type { View } from "../form/extrusion.js";
import type { Sheet } from "../form/face.js";
import { alongTo, crossing, inward, type Line, lineThrough } from "../form/lines.js";
import { type Bounds, sheetAt, wallAxes, wallSheet } from "../form/wallSheet.js";
import type { Inside } from "../inside.js";
import { type Axis, lineAcross } from "./across.js";
import { chordOf, edgeLine } from "./section.js";

/** A board that stands in the box square to its section: where its face runs, the board to the left of that. */
export type Upright = {
  readonly line: Line;
  readonly thickness: number;
  /** The planes that cut off its ends. */
  readonly start: Line;
  readonly end: Line;
  readonly bounds: Bounds;
};

/** How the section of a box lies, which decides how its boards are looked at. */
export type Lie = { readonly view: View; readonly length: number };

export function uprightSheet({ line, thickness, start, end, bounds }: Upright, air: Inside, lie: Lie): Sheet {
  const [a, b] = [crossing(line, start), crossing(line, end)];
  const face = lineThrough(a, b);
  const back = inward(face, thickness);
  const at = (plane: Line) => alongTo(face, crossing(back, plane));
  const along = { face: [0, alongTo(face, b)], back: [at(start), at(end)] } as const;
  const up = [air.from, air.to] as const;
  const section = [a, b].map((corner) => ({ ...corner, bulge: 0, by: "" }));
  return wallSheet(wallAxes({ ...lie, section }, 0), bounds, along, { face: up, back: up }, 0, thickness);
}

/**
 * A board right across some air, its nearer side `at` mm from the outside of the box: from wall to wall, bevelled where a
 * wall leans. Its face looks away from where the axis begins.
 *
 * Returns: none where it would miss the air, run through it twice, or stand in a corner of the section.
 */
export function sheetAcross(air: Inside, axis: Axis, at: number, thickness: number, lie: Lie): Sheet | undefined {
  if (axis === "length") {
    const within = at > air.from && at + thickness < air.to;
    return within ? flatSheet(air, at + thickness, thickness) : undefined;
  }
  const [near, far] = [lineAcross(axis, at), lineAcross(axis, at + thickness)];
  const [chord, same] = [chordOf(air.section, near), chordOf(air.section, far)];
  if (chord === undefined || chord.start !== same?.start || chord.end !== same.end) return undefined;
  const [start, end] = [edgeLine(air.section, chord.start), edgeLine(air.section, chord.end)];
  const name = (i: number) => air.section[i]!.by;
  const bounds = { before: name(chord.start), after: name(chord.end), low: air.ends[0], high: air.ends[1] };
  return uprightSheet({ line: far, thickness, start, end, bounds }, air, lie);
}

/** A board of the whole section, its face at this height along the extrusion. */
export function flatSheet({ section, frame }: Inside, face: number, thickness: number): Sheet {
  return sheetAt(compose(frame, shifted(0, 0, face)), section, {}, 0, thickness);
}

/** The outline of a sheet so deep below its face, bevels and all. */
export const outlineAt = (sheet: Sheet, depth: number): Profile => movedIn(sheet, (bevel) => depth * Math.tan(bevel));

/** What of a sheet is board all through: where an edge is bevelled, the nearer in of face and back. */
export const throughAll = (sheet: Sheet): Profile =>
  Object.keys(sheet.bevels).length === 0
    ? sheet.outline
    : movedIn(sheet, (bevel) => Math.max(0, sheet.thickness * Math.tan(bevel)));

function movedIn({ outline, bevels }: Sheet, by: (bevel: number) => number): Profile {
  const n = outline.length;
  const edges = outline.map((corner, i) => inward(edgeLine(outline, i), by(bevels[corner.by] ?? 0)));
  return outline.map((corner, i) => ({ ...corner, ...crossing(edges[(i + n - 1) % n]!, edges[i]!) }));
}

/** What a sheet holds, L: with bevelled edges by the prismoid formula, exact where every edge is straight. */
export function sheetL(sheet: Sheet): number {
  if (Object.keys(sheet.bevels).length === 0) return (areaOf(sheet.outline) * sheet.thickness) / 1e6;
  const area = (depth: number) => areaOf(outlineAt(sheet, depth));
  const { thickness } = sheet;
  return (thickness * (area(0) + 4 * area(thickness / 2) + area(thickness))) / 6 / 1e6;
}
