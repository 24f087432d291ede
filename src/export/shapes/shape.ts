import { extentsOf } from "../../geometry/measure.js";
import type { Extents, Path, Point, Profile } from "../../geometry/profile.js";
import type { ToSheet } from "../../nest/placed.js";

/** Something drawn on a layer, mm. A loop is closed; a chain is open; words start at `at`, on the line. */
export type Shape =
  | { readonly kind: "loop"; readonly layer: string; readonly profile: Profile }
  | { readonly kind: "chain"; readonly layer: string; readonly path: Path }
  | { readonly kind: "round"; readonly layer: string; readonly at: Point; readonly d: number }
  | {
      readonly kind: "words";
      readonly layer: string;
      readonly at: Point;
      readonly height: number;
      readonly text: string;
    };

/** Width of a letter of a plain stroke font over its height, roughly (common practice, no source). */
const letterWidth = 0.9;

export function widthOfWords(text: string, height: number): number {
  return [...text].length * height * letterWidth;
}

/** A shape of a part, where the part lies on its sheet. Words stay upright and readable. */
export function layOnSheet(shape: Shape, to: ToSheet): Shape {
  switch (shape.kind) {
    case "loop":
      return { ...shape, profile: to.region({ outer: shape.profile, holes: [] }).outer };
    case "chain":
      return { ...shape, path: to.path(shape.path) };
    case "round":
    case "words":
      return { ...shape, at: to.point(shape.at) };
  }
}

/** The box around all of them; there is at least one. */
export function extentsOfShapes(shapes: readonly Shape[]): Extents {
  const boxes = shapes.map(shapeExtents);
  return {
    min: { x: Math.min(...boxes.map(({ min }) => min.x)), y: Math.min(...boxes.map(({ min }) => min.y)) },
    max: { x: Math.max(...boxes.map(({ max }) => max.x)), y: Math.max(...boxes.map(({ max }) => max.y)) },
  };
}

function shapeExtents(shape: Shape): Extents {
  switch (shape.kind) {
    case "loop":
      return extentsOf(shape.profile);
    case "chain":
      return extentsOf(shape.path);
    case "round":
      return around(shape.at, -shape.d / 2, -shape.d / 2, shape.d / 2, shape.d / 2);
    case "words":
      return around(shape.at, 0, -shape.height / 3, widthOfWords(shape.text, shape.height), shape.height);
  }
}

function around({ x, y }: Point, left: number, down: number, right: number, up: number): Extents {
  return { min: { x: x + left, y: y + down }, max: { x: x + right, y: y + up } };
}
