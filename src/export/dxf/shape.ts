import { extentsOf, isCircle } from "../../geometry/measure.js";
import type { Extents, Path, Point, Profile, Vertex } from "../../geometry/profile.js";
import type { ToSheet } from "../../nest/placed.js";
import { dxfText } from "./dxfText.js";
import { place, real, type Tag, whole } from "./tag.js";

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

/** Width of a letter of the format's plain stroke font over its height, roughly (common practice, no source). */
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

export function shapeExtents(shape: Shape): Extents {
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

/** The shape as an entity of the file; `scale`: drawing units in a millimetre. */
export function entityOf(shape: Shape, scale: number): readonly Tag[] {
  switch (shape.kind) {
    case "loop": {
      const round = isCircle(shape.profile);
      return round
        ? circle(shape.layer, round.center, round.radius, scale)
        : polyline(shape.layer, shape.profile, true, scale);
    }
    case "chain":
      return polyline(shape.layer, shape.path, false, scale);
    case "round":
      return circle(shape.layer, shape.at, shape.d / 2, scale);
    case "words":
      return [
        [0, "TEXT"],
        [8, shape.layer],
        ...place(10, shape.at.x * scale, shape.at.y * scale),
        real(40, shape.height * scale),
        [1, dxfText(shape.text)],
      ];
  }
}

function circle(layer: string, at: Point, radius: number, scale: number): readonly Tag[] {
  return [[0, "CIRCLE"], [8, layer], ...place(10, at.x * scale, at.y * scale), real(40, radius * scale)];
}

/** R12 has no light polyline: POLYLINE, a VERTEX for each corner (42: the bulge of the edge that leaves it), SEQEND. */
function polyline(layer: string, vertices: readonly Vertex[], closed: boolean, scale: number): readonly Tag[] {
  return [
    [0, "POLYLINE"],
    [8, layer],
    whole(66, 1),
    ...place(10, 0, 0),
    whole(70, closed ? 1 : 0),
    ...vertices.flatMap((v) => vertex(layer, v, scale)),
    [0, "SEQEND"],
    [8, layer],
  ];
}

function vertex(layer: string, { x, y, bulge }: Vertex, scale: number): readonly Tag[] {
  const bow: readonly Tag[] = bulge === 0 ? [] : [real(42, bulge, 12)];
  return [[0, "VERTEX"], [8, layer], ...place(10, x * scale, y * scale), ...bow];
}
