import { compose, type Frame, place, shifted, type Vector } from "../../geometry/frame.js";
import type { Point } from "../../geometry/profile.js";
import type { Around } from "../../model/piece.js";
import { snap, stepOf } from "../common/method.js";
import { type FaceName, faceFrame, faceSize, faces, type Span } from "./faces.js";
import { type Outside, type Panels, panelsOf } from "./panels.js";
import { type EnclosureSpec, sizeNames } from "./schema.js";

/** Top and bottom run over the walls, front and rear over the sides. */
export const usualLaps: readonly FaceName[] = ["top", "bottom", "front", "rear", "left", "right"];

/** A box with its free size settled: every panel's place, and where the box stands. */
export type Shape = Panels & {
  readonly thickness: number;
  readonly laps: readonly FaceName[];
  /** The step that sawn sizes keep to, mm. */
  readonly step: number | undefined;
  /** The outside as one block, without what stands proud. */
  readonly block: Span;
  /** The box's frame in the vehicle: origin at its left rear bottom corner. */
  readonly stands: Frame;
};

export function shapeOf(spec: EnclosureSpec, size: number, around: Around): Shape {
  const { thickness } = around.board(spec.board);
  const asked = sizeNames.map((key) => {
    const value = spec.outside[key];
    return value === "free" ? size : value;
  }) as unknown as Outside;
  const laps = spec.laps ?? usualLaps;
  const step = stepOf(spec, around);
  const panels = panelsOf(asked, thickness, laps, step);
  const block: Span = { min: [0, 0, 0], max: panels.outside };
  return { ...panels, thickness, laps, step, block, stands: standsOf(spec, block, around) };
}

/** The driver's place on its face, part axes of the outside block: the middle where the job does not say. */
export function driverPoint(spec: EnclosureSpec, block: Span): Point {
  const driver = spec.driver;
  return driver === undefined ? { x: 0, y: 0 } : pointOn(driver.in, driver.at, block);
}

/** A point given from a face's lower left corner as seen from outside; its middle where there is none. */
export function pointOn(face: FaceName, at: readonly [number, number] | undefined, block: Span): Point {
  const { width, height } = faceSize(face, block);
  return at === undefined ? { x: width / 2, y: height / 2 } : { x: at[0], y: at[1] };
}

/** The frame of a point on the outside of a face, box frame: z out of the box. */
export function frameOn(face: FaceName, point: Point, block: Span): Frame {
  return compose(faceFrame(face, block), shifted(point.x, point.y, 0));
}

/**
 * Where the box stands. `line up` wins over x or y along the line's own axis. Along x and y the step of sawn sizes
 * does not matter: nothing is set to it by hand.
 */
function standsOf(spec: EnclosureSpec, block: Span, around: Around): Frame {
  const stands = spec.stands ?? {};
  const line = stands["line up"] && around.job.space.lines[stands["line up"].driver];
  const driver = place(faceFrame(spec.driver?.in ?? "top", block), toVector(driverPoint(spec, block)));
  const x = line && "x" in line ? line.x - driver[0] : (stands.x ?? 0);
  const y = line && "y" in line ? line.y - driver[1] : (stands.y ?? 0);
  return shifted(x, y, stands.z ?? 0);
}

function toVector(point: Point): Vector {
  return [point.x, point.y, 0];
}

/** The driver's cut-out diameter as it is cut, mm. */
export function cutOutOf(spec: EnclosureSpec, around: Around): number | undefined {
  const driver = spec.driver && around.job.drivers[spec.driver.is];
  return driver && snap(driver["cut-out"], stepOf(spec, around));
}

/** The part of a face, in its panel's own axes, that has air behind it. */
export function airBehind(face: FaceName, shape: Shape): { readonly min: Point; readonly max: Point } {
  const frame = faceFrame(face, shape.spans[face]);
  const corners = [shape.inside.min, shape.inside.max].map((corner) => onFace(frame, face, corner));
  const xs = corners.map((c) => c.x);
  const ys = corners.map((c) => c.y);
  return {
    min: { x: Math.min(...xs), y: Math.min(...ys) },
    max: { x: Math.max(...xs), y: Math.max(...ys) },
  };
}

/** A point of the box frame in the axes of a face's frame. */
export function onFace(frame: Frame, face: FaceName, point: Vector): Point {
  const along = (direction: Vector) =>
    direction.reduce((sum, c, axis) => sum + c * (point[axis as 0 | 1 | 2] - frame.origin[axis as 0 | 1 | 2]), 0);
  return { x: along(faces[face].x), y: along(faces[face].y) };
}
