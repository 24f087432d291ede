import { extentsOf } from "../../../geometry/measure.js";
import type { View } from "../form/extrusion.js";
import { type Line, lineThrough } from "../form/lines.js";
import type { Inside } from "../inside.js";
import type { SizeName } from "../schema.js";

/** Along the extrusion, or along an axis of the section. */
export type Axis = "length" | "x" | "y";

const axes: Readonly<Record<View, Readonly<Record<SizeName, Axis>>>> = {
  side: { width: "length", depth: "x", height: "y" },
  plan: { width: "x", depth: "y", height: "length" },
};

/** Which way a board stands that parts the box across its width, depth or height. */
export const axisAcross = (across: SizeName, view: View): Axis => axes[view][across];

/** From where to where the air reaches along an axis, mm from the outside of the box. */
export function reachOf({ section, from, to }: Inside, axis: Axis): readonly [number, number] {
  if (axis === "length") return [from, to];
  const { min, max } = extentsOf(section);
  return [min[axis], max[axis]];
}

/** The line across a section at this place along an axis, with what lies below that to its left. */
export function lineAcross(axis: "x" | "y", at: number): Line {
  return axis === "x" ? lineThrough({ x: at, y: 0 }, { x: at, y: 1 }) : lineThrough({ x: 0, y: at }, { x: -1, y: at });
}
