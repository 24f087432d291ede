import { type Frame, frameFromAxes, type Vector } from "../../geometry/frame.js";

/** The six faces of a box that stands square in the vehicle: front looks forward (+y), rear to the tail. */
export const faceNames = ["top", "bottom", "front", "rear", "left", "right"] as const;
export type FaceName = (typeof faceNames)[number];

/** 0 x, 1 y, 2 z. */
export type AxisIndex = 0 | 1 | 2;

/** An axis-parallel block: least and greatest corner, mm. */
export type Span = { readonly min: Vector; readonly max: Vector };

/**
 * How a face lies. `axis` and `end` tell which side of the box it is; `x` and `y` are the part's axes in the box frame
 * as one sees the face from outside; `corner` picks, per axis, which end of the panel's span is the part's origin;
 * `edges` names the neighbour at the part's bottom, right, top and left edge.
 */
type FaceTable = {
  readonly axis: AxisIndex;
  readonly end: "min" | "max";
  readonly x: Vector;
  readonly y: Vector;
  readonly edges: readonly [FaceName, FaceName, FaceName, FaceName];
};

export const faces: Readonly<Record<FaceName, FaceTable>> = {
  top: { axis: 2, end: "max", x: [1, 0, 0], y: [0, 1, 0], edges: ["rear", "right", "front", "left"] },
  bottom: { axis: 2, end: "min", x: [1, 0, 0], y: [0, -1, 0], edges: ["front", "right", "rear", "left"] },
  front: { axis: 1, end: "max", x: [-1, 0, 0], y: [0, 0, 1], edges: ["bottom", "left", "top", "right"] },
  rear: { axis: 1, end: "min", x: [1, 0, 0], y: [0, 0, 1], edges: ["bottom", "right", "top", "left"] },
  left: { axis: 0, end: "min", x: [0, -1, 0], y: [0, 0, 1], edges: ["bottom", "rear", "top", "front"] },
  right: { axis: 0, end: "max", x: [0, 1, 0], y: [0, 0, 1], edges: ["bottom", "front", "top", "rear"] },
};

/** The face at this end of this axis. */
export function faceAt(axis: AxisIndex, end: "min" | "max"): FaceName {
  return faceNames.find((name) => faces[name].axis === axis && faces[name].end === end)!;
}

/** The frame of a face of a block, seen from outside: origin at its lower left corner, z out of the block. */
export function faceFrame(name: FaceName, span: Span): Frame {
  const face = faces[name];
  const origin = ([0, 1, 2] as const).map((axis) => {
    if (axis === face.axis) return face.end === "max" ? span.max[axis] : span.min[axis];
    return face.x[axis] + face.y[axis] > 0 ? span.min[axis] : span.max[axis];
  });
  return frameFromAxes(origin as unknown as Vector, face.x, face.y);
}

/** Width and height of a face of a block, as the part's own x and y. */
export function faceSize(name: FaceName, span: Span): { readonly width: number; readonly height: number } {
  const along = (direction: Vector) => {
    const axis = direction.findIndex((c) => c !== 0) as AxisIndex;
    return span.max[axis] - span.min[axis];
  };
  return { width: along(faces[name].x), height: along(faces[name].y) };
}
