import type { Extents } from "../../geometry/profile.js";
import type { Show } from "../../input/show.js";
import { type LineType, lineTypeOf } from "../shapes/layers.js";
import { extentsOfShapes, type Shape } from "../shapes/shape.js";
import { colourOf } from "./colours.js";
import { dxfText } from "./dxfText.js";
import { entityOf } from "./entity.js";
import { fileOf, place, real, section, type Tag, whole } from "./tag.js";

/** A drawing in mm, to be written in the job's unit. `notes` stand as comments at the head of the file. */
export type DxfDrawing = { readonly shapes: readonly Shape[]; readonly notes: readonly string[]; readonly show: Show };

/**
 * The bytes of an R12 file (AC1009): the oldest form that every reader takes, with no handles and no classes to get
 * wrong. R12 itself knows no $INSUNITS; readers of it take the variable where it is there.
 *
 * Source: DXF Reference, header variables, TABLES and ENTITIES sections, R12 (from memory); read back in the tests
 * through two readers that know nothing of this code.
 */
export function dxfBytes(drawing: DxfDrawing): Uint8Array {
  const scale = drawing.show.unit === "mm" ? 1 : 1 / 25.4;
  const extents = scaled(extentsOfShapes(drawing.shapes), scale);
  return fileOf([
    ...drawing.notes.map((note): Tag => [999, dxfText(note)]),
    ...section("HEADER", header(drawing.show, extents)),
    ...section("TABLES", tables(drawing.shapes, extents, scale)),
    ...section("BLOCKS", []),
    ...section(
      "ENTITIES",
      drawing.shapes.flatMap((shape) => entityOf(shape, scale)),
    ),
    [0, "EOF"],
  ]);
}

function header(show: Show, { min, max }: Extents): readonly Tag[] {
  const metric = show.unit === "mm";
  return [
    ...variable("$ACADVER", [[1, "AC1009"]]),
    ...variable("$INSUNITS", [whole(70, metric ? 4 : 1)]),
    ...variable("$MEASUREMENT", [whole(70, metric ? 1 : 0)]),
    ...variable("$LUNITS", [whole(70, 2)]),
    ...variable("$LUPREC", [whole(70, 4)]),
    ...variable("$INSBASE", place(10, 0, 0)),
    ...variable("$EXTMIN", place(10, min.x, min.y)),
    ...variable("$EXTMAX", place(10, max.x, max.y)),
    ...variable("$LIMMIN", flat(min.x, min.y)),
    ...variable("$LIMMAX", flat(max.x, max.y)),
    ...variable("$LTSCALE", [real(40, 1)]),
  ];
}

function variable(name: string, value: readonly Tag[]): readonly Tag[] {
  return [[9, name], ...value];
}

const flat = (x: number, y: number): readonly Tag[] => [real(10, x), real(20, y)];

function tables(shapes: readonly Shape[], extents: Extents, scale: number): readonly Tag[] {
  const names = [...new Set(shapes.map((shape) => shape.layer))].sort();
  return [
    ...table("VPORT", [viewOf(extents)]),
    ...table(
      "LTYPE",
      lineTypes.map(([name, words, dashes]) => lineType(name, words, dashes, scale)),
    ),
    ...table("LAYER", ["0", ...names].map(layer)),
    ...table("STYLE", [textStyle]),
  ];
}

function table(name: string, entries: readonly (readonly Tag[])[]): readonly Tag[] {
  return [[0, "TABLE"], [2, name], whole(70, entries.length), ...entries.flat(), [0, "ENDTAB"]];
}

/** What a viewer shows first: all of it. */
function viewOf({ min, max }: Extents): readonly Tag[] {
  const width = max.x - min.x;
  const height = max.y - min.y;
  return [
    [0, "VPORT"],
    [2, "*ACTIVE"],
    whole(70, 0),
    ...flat(0, 0),
    ...[real(11, 1), real(21, 1)],
    ...[real(12, (min.x + max.x) / 2), real(22, (min.y + max.y) / 2)],
    ...place(16, 0, 0).slice(0, 2),
    real(36, 1),
    real(40, Math.max(height, width / 1.5) * 1.05),
    real(41, 1.5),
  ];
}

/** Dashes (+) and spaces (-), mm. */
const lineTypes: readonly (readonly [LineType, string, readonly number[]])[] = [
  ["CONTINUOUS", "Solid line", []],
  ["DASHED", "Dashes", [6, -3]],
  ["DASHDOT", "Dash and dot", [9, -3, 0, -3]],
];

function lineType(name: LineType, words: string, dashes: readonly number[], scale: number): readonly Tag[] {
  return [
    [0, "LTYPE"],
    [2, name],
    whole(70, 0),
    [3, words],
    whole(72, 65), // "A": the only alignment the format knows
    whole(73, dashes.length),
    real(40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0) * scale),
    ...dashes.map((dash) => real(49, dash * scale)),
  ];
}

function layer(name: string): readonly Tag[] {
  const colour = name === "0" ? 7 : colourOf(name);
  return [[0, "LAYER"], [2, name], whole(70, 0), whole(62, colour), [6, lineTypeOf(name)]];
}

const textStyle: readonly Tag[] = [
  [0, "STYLE"],
  [2, "STANDARD"],
  whole(70, 0),
  real(40, 0),
  real(41, 1),
  real(50, 0),
  whole(71, 0),
  real(42, 1),
  [3, "txt"],
  [4, ""],
];

function scaled({ min, max }: Extents, scale: number): Extents {
  return { min: { x: min.x * scale, y: min.y * scale }, max: { x: max.x * scale, y: max.y * scale } };
}
