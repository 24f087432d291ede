import type { Extents } from "../../geometry/profile.js";
import { lineTypeOf } from "../shapes/layers.js";
import { extentsOfShapes, type Shape } from "../shapes/shape.js";
import { colourOf } from "./colours.js";
import { type DxfDrawing, header, lineTypes, lineTypeTags, scaled, scaleOf, textStyle, viewOf } from "./common.js";
import { dxfText } from "./dxfText.js";
import { entityOf } from "./entity.js";
import { fileOf, section, type Tag, whole } from "./tag.js";

/**
 * The bytes of an R12 file (AC1009): the oldest form that every reader takes, with no handles and no classes to get
 * wrong. R12 itself knows no $INSUNITS; readers of it take the variable where it is there.
 *
 * Source: DXF Reference, header variables, TABLES and ENTITIES sections, R12 (from memory); read back in the tests
 * through two readers that know nothing of this code.
 */
export function dxfR12(drawing: DxfDrawing): Uint8Array {
  const scale = scaleOf(drawing.show);
  const extents = scaled(extentsOfShapes(drawing.shapes), scale);
  return fileOf([
    ...drawing.notes.map((note): Tag => [999, dxfText(note)]),
    ...section("HEADER", header("AC1009", drawing.show, extents)),
    ...section("TABLES", tables(drawing.shapes, extents, scale)),
    ...section("BLOCKS", []),
    ...section(
      "ENTITIES",
      drawing.shapes.flatMap((shape) => entityOf(shape, scale)),
    ),
    [0, "EOF"],
  ]);
}

function tables(shapes: readonly Shape[], extents: Extents, scale: number): readonly Tag[] {
  const names = [...new Set(shapes.map((shape) => shape.layer))].sort();
  return [
    ...table("VPORT", [[[0, "VPORT"], ...viewOf(extents)]]),
    ...table(
      "LTYPE",
      lineTypes.map(([name, words, dashes]): readonly Tag[] => [
        [0, "LTYPE"],
        ...lineTypeTags(name, words, dashes, scale),
      ]),
    ),
    ...table("LAYER", ["0", ...names].map(layer)),
    ...table("STYLE", [[[0, "STYLE"], ...textStyle]]),
  ];
}

function table(name: string, entries: readonly (readonly Tag[])[]): readonly Tag[] {
  return [[0, "TABLE"], [2, name], whole(70, entries.length), ...entries.flat(), [0, "ENDTAB"]];
}

function layer(name: string): readonly Tag[] {
  const colour = name === "0" ? 7 : colourOf(name);
  return [[0, "LAYER"], [2, name], whole(70, 0), whole(62, colour), [6, lineTypeOf(name)]];
}
