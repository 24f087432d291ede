import { cross, dot, type Frame, place, turn, type Vector } from "./frame.js";
import type { Block } from "./solids.js";

/** A block and the frame in which its sides are parallel to the axes. */
export type StandingBlock = { readonly block: Block; readonly at: Frame };

const unit: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * How far apart two blocks stand, mm, however they are turned. Negative: how deep they overlap, which is the least
 * shift that would free them.
 *
 * Method: two convex bodies are apart if and only if some axis shows a gap between their shadows; for blocks the fifteen
 * face normals and cross products of edges are enough (S. Gottschalk, M. C. Lin, D. Manocha, "OBBTree", SIGGRAPH 1996,
 * section 5; from memory). A gap is the greatest over the axes, so between two corners it is less than the true distance.
 */
export function separation(a: StandingBlock, b: StandingBlock): number {
  const axesA = unit.map((axis) => turn(a.at.quat, axis));
  const axesB = unit.map((axis) => turn(b.at.quat, axis));
  const crossed = axesA.flatMap((u) => axesB.flatMap((v) => unitOf(cross(u, v))));
  const between = minus(centreOf(b), centreOf(a));
  let most = Number.NEGATIVE_INFINITY;
  for (const axis of [...axesA, ...axesB, ...crossed]) {
    const gap = Math.abs(dot(between, axis)) - reach(a, axesA, axis) - reach(b, axesB, axis);
    most = Math.max(most, gap);
  }
  return most;
}

/** The eight corners of a standing block, in the frame that holds it. */
export function cornersOf({ block: { min, max }, at }: StandingBlock): readonly Vector[] {
  return [min[0], max[0]].flatMap((x) =>
    [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z) => place(at, [x, y, z]))),
  );
}

/** The block around points, along the world's axes. */
export function blockAround(points: readonly Vector[]): Block {
  const along = (pick: (...values: number[]) => number): Vector => [
    pick(...points.map((p) => p[0])),
    pick(...points.map((p) => p[1])),
    pick(...points.map((p) => p[2])),
  ];
  return { min: along(Math.min), max: along(Math.max) };
}

function centreOf({ block: { min, max }, at }: StandingBlock): Vector {
  return place(at, [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2]);
}

/** Half the length of a block's shadow on an axis. */
function reach({ block: { min, max } }: StandingBlock, axes: readonly Vector[], along: Vector): number {
  return axes.reduce((sum, axis, i) => sum + (Math.abs(dot(axis, along)) * (max[i]! - min[i]!)) / 2, 0);
}

/** None for two parallel edges: their face normals say it already. */
function unitOf(v: Vector): Vector[] {
  const length = Math.hypot(...v);
  return length < 1e-6 ? [] : [[v[0] / length, v[1] / length, v[2] / length]];
}

function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}
