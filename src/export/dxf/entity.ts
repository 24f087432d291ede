import { isCircle } from "../../geometry/measure.js";
import type { Point, Vertex } from "../../geometry/profile.js";
import type { Shape } from "../shapes/shape.js";
import { dxfText } from "./dxfText.js";
import { place, real, type Tag, whole } from "./tag.js";

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
