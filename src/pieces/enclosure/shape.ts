import { compose, type Frame, place, shifted } from "../../geometry/frame.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Point } from "../../geometry/profile.js";
import type { Around } from "../../model/piece.js";
import { type FitOut, fitOutOf } from "./chambers/fitOut.js";
import type { Places } from "./chambers/wanted.js";
import { type Boards, faceOf } from "./form/box.js";
import { sectionFrames } from "./form/extrusion.js";
import type { Face } from "./form/face.js";
import { workedOut } from "./form/workedOut.js";
import { driversOf, type EnclosureSpec } from "./schema.js";

/** An axis-parallel block: least and greatest corner, mm. */
export type Span = { readonly min: readonly [number, number, number]; readonly max: readonly [number, number, number] };

/** A box with its free size settled: every board's place, and where the box stands. */
export type Shape = Boards & {
  /** Its chambers, and what stands in them. */
  readonly fitOut: FitOut;
  /** The step that sawn sizes keep to, mm. */
  readonly step: number | undefined;
  /** The block round the outside, without what stands proud, in the box frame: from its left rear bottom corner. */
  readonly outside: Span;
  /** The box's frame in the vehicle. */
  readonly stands: Frame;
};

/** The box at this size, its free dividers at these places. */
export function shapeAt(spec: EnclosureSpec, size: number, around: Around, places: Places): Shape {
  const { asked, boards } = workedOut(spec, size, around);
  return {
    ...boards,
    fitOut: fitOutOf(spec, boards, asked.step, around, places),
    step: asked.step,
    outside: outsideOf(boards),
    stands: standsOf(spec, boards, around),
  };
}

function outsideOf({ extrusion: { view, section, length } }: Boards): Span {
  const { max } = extentsOf(section);
  return { min: [0, 0, 0], max: place(sectionFrames[view], [max.x, max.y, length]) };
}

/** A point given from a face's lower left corner as seen from outside; the middle of its extents where there is none. */
export function pointOn(face: Face, at: readonly [number, number] | undefined): Point {
  if (at !== undefined) return { x: at[0], y: at[1] };
  const { min, max } = extentsOf(face.outline);
  return { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
}

/** The frame of a point on the outside of a face, box frame: z out of the box. */
export function frameOn(face: Face, point: Point, lift = 0): Frame {
  return compose(face.frame, shifted(point.x, point.y, lift));
}

/**
 * Where the box stands. `line up` wins over x or y along the line's own axis. Along x and y the step of sawn sizes
 * does not matter: nothing is set to it by hand.
 */
function standsOf(spec: EnclosureSpec, boards: Boards, around: Around): Frame {
  const stands = spec.stands ?? {};
  const line = stands["line up"] && around.job.space.lines[stands["line up"].driver];
  const [first] = driversOf(spec);
  const face = first && faceOf(boards, first.in);
  const [x, y] = face === undefined ? [0, 0] : frameOn(face, pointOn(face, first?.at)).origin;
  return shifted(
    line && "x" in line ? line.x - x : (stands.x ?? 0),
    line && "y" in line ? line.y - y : (stands.y ?? 0),
    stands.z ?? coveringOn(spec, lowest(boards), around),
  );
}

/** The face that the box stands on. */
function lowest({ faces }: Boards): Face {
  return faces.reduce((low, face) => (middleHeight(face) < middleHeight(low) ? face : low));
}

function middleHeight(face: Face): number {
  return frameOn(face, pointOn(face, undefined)).origin[2];
}

/** How thick the covering of a face is as laid, mm; 0 where it is bare. */
export function coveringOn({ covered }: EnclosureSpec, { name }: Face, around: Around): number {
  const isCovered = covered !== undefined && (covered.faces?.includes(name) ?? true);
  return isCovered ? (around.job.coverings[covered.with]?.thick ?? 0) : 0;
}
