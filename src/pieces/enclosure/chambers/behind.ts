import { extentsOf } from "../../../geometry/measure.js";
import type { Point } from "../../../geometry/profile.js";
import { type Face, onSheet, type Sheet } from "../form/face.js";
import type { Shape } from "../shape.js";
import { airBehind } from "./airBehind.js";
import type { Chamber } from "./divide.js";

/** The chamber behind a place on a face, and what of the face has that chamber's air behind it. */
export type Behind = { readonly chamber: Chamber; readonly air: Sheet };

/** Where the place lies over a divider or a wall: the chamber that is nearest. `point` in the face's axes. */
export function behind(face: Face, point: Point, { extrusion, fitOut }: Pick<Shape, "extrusion" | "fitOut">) {
  const found = fitOut.chambers.flatMap((chamber) => {
    const air = airBehind(face, chamber.air, extrusion);
    return air === undefined ? [] : [{ chamber, air, off: outOf(air, onSheet(face, air, point)) }];
  });
  const nearest = (best: (typeof found)[number] | undefined, next: (typeof found)[number]) =>
    best === undefined || next.off < best.off ? next : best;
  return found.reduce(nearest, undefined) satisfies Behind | undefined;
}

/** How far a point lies out of the extents of a sheet; 0 inside. mm. */
function outOf({ outline }: Sheet, { x, y }: Point): number {
  const { min, max } = extentsOf(outline);
  return Math.max(0, min.x - x, x - max.x, min.y - y, y - max.y);
}
