import { isCircle } from "../../geometry/measure.js";
import type { Vertex } from "../../geometry/profile.js";
import { lineTypeOf } from "../shapes/layers.js";
import { extentsOfShapes, type Shape } from "../shapes/shape.js";
import { colourOf } from "./colours.js";
import {
  type DxfDrawing,
  flat,
  header,
  lineTypes,
  lineTypeTags,
  scaled,
  scaleOf,
  textStyle,
  variable,
  viewOf,
} from "./common.js";
import { dxfText } from "./dxfText.js";
import { fileOf, place, real, section, type Tag, whole } from "./tag.js";

/** Everything in the file has a number of its own, in hexadecimal; owners are named by theirs. */
type Handles = { readonly next: () => string };

/**
 * The bytes of a 2000 file (AC1015): light polylines, a handle for everything, classes named before their groups.
 *
 * Source: DXF Reference for 2000, sections HEADER to OBJECTS (from memory); read back in the tests through readers that
 * know nothing of this code.
 */
export function dxf2000(drawing: DxfDrawing): Uint8Array {
  const scale = scaleOf(drawing.show);
  const handles = countedHandles();
  const model = handles.next();
  const paper = handles.next();
  const bodies = [
    ...section("CLASSES", []),
    ...section("TABLES", tables(drawing, scale, handles, model, paper)),
    ...section("BLOCKS", [...block("*MODEL_SPACE", model, handles), ...block("*PAPER_SPACE", paper, handles)]),
    ...section(
      "ENTITIES",
      drawing.shapes.flatMap((shape) => entity(shape, scale, handles, model)),
    ),
    ...section("OBJECTS", objects(handles)),
  ];
  return fileOf([
    ...drawing.notes.map((note): Tag => [999, dxfText(note)]),
    ...section("HEADER", [
      ...header("AC1015", drawing.show, scaled(extentsOfShapes(drawing.shapes), scale)),
      ...variable("$HANDSEED", [[5, handles.next()]]),
    ]),
    ...bodies,
    [0, "EOF"],
  ]);
}

function countedHandles(): Handles {
  let count = 0;
  return {
    next: () => {
      count++;
      return count.toString(16).toUpperCase();
    },
  };
}

function tables({ shapes }: DxfDrawing, scale: number, handles: Handles, model: string, paper: string): readonly Tag[] {
  const layers = ["0", ...new Set(shapes.map((shape) => shape.layer).sort())];
  const extents = scaled(extentsOfShapes(shapes), scale);
  const patterns = [["BYBLOCK", "", []] as const, ["BYLAYER", "", []] as const, ...lineTypes];
  return [
    ...table("VPORT", handles, [{ kind: "AcDbViewportTableRecord", tags: viewOf(extents) }]),
    ...table(
      "LTYPE",
      handles,
      patterns.map(([name, words, dashes]) => ({
        kind: "AcDbLinetypeTableRecord",
        tags: lineTypeTags(name, words, dashes, scale, [whole(74, 0)]),
      })),
    ),
    ...table(
      "LAYER",
      handles,
      layers.map((name) => ({
        kind: "AcDbLayerTableRecord",
        tags: [[2, name], whole(70, 0), whole(62, name === "0" ? 7 : colourOf(name)), [6, lineTypeOf(name)]],
      })),
    ),
    ...table("STYLE", handles, [{ kind: "AcDbTextStyleTableRecord", tags: textStyle }]),
    ...table("VIEW", handles, []),
    ...table("UCS", handles, []),
    ...table("APPID", handles, [{ kind: "AcDbRegAppTableRecord", tags: [[2, "ACAD"], whole(70, 0)] }]),
    ...table("DIMSTYLE", handles, [{ kind: "AcDbDimStyleTableRecord", tags: [[2, "STANDARD"], whole(70, 0)] }]),
    ...table("BLOCK_RECORD", handles, [
      { kind: "AcDbBlockTableRecord", tags: [[2, "*MODEL_SPACE"]], handle: model },
      { kind: "AcDbBlockTableRecord", tags: [[2, "*PAPER_SPACE"]], handle: paper },
    ]),
  ];
}

/** An entry of a table: its class, what it says, and its handle where others have named it already. */
type Entry = { readonly kind: string; readonly tags: readonly Tag[]; readonly handle?: string };

function table(name: string, handles: Handles, entries: readonly Entry[]): readonly Tag[] {
  const own = handles.next();
  const dimensions = name === "DIMSTYLE";
  return [
    [0, "TABLE"],
    [2, name],
    [5, own],
    [330, "0"],
    [100, "AcDbSymbolTable"],
    whole(70, entries.length),
    ...(dimensions ? ([[100, "AcDbDimStyleTable"], whole(71, 0)] as const) : []),
    ...entries.flatMap(({ kind, tags, handle }): readonly Tag[] => [
      [0, name],
      [dimensions ? 105 : 5, handle ?? handles.next()],
      [330, own],
      [100, "AcDbSymbolTableRecord"],
      [100, kind],
      ...tags,
    ]),
    [0, "ENDTAB"],
  ];
}

function block(name: string, record: string, handles: Handles): readonly Tag[] {
  const begins: readonly Tag[] = [
    [0, "BLOCK"],
    [5, handles.next()],
    [330, record],
    [100, "AcDbEntity"],
    [8, "0"],
    [100, "AcDbBlockBegin"],
    [2, name],
    whole(70, 0),
    ...place(10, 0, 0),
    [3, name],
    [1, ""],
  ];
  return [
    ...begins,
    [0, "ENDBLK"],
    [5, handles.next()],
    [330, record],
    [100, "AcDbEntity"],
    [8, "0"],
    [100, "AcDbBlockEnd"],
  ];
}

function entity(shape: Shape, scale: number, handles: Handles, owner: string): readonly Tag[] {
  const head = (kind: string, of: string): readonly Tag[] => [
    [0, kind],
    [5, handles.next()],
    [330, owner],
    [100, "AcDbEntity"],
    [8, shape.layer],
    [100, of],
  ];
  const circle = (x: number, y: number, radius: number) => [
    ...head("CIRCLE", "AcDbCircle"),
    ...place(10, x * scale, y * scale),
    real(40, radius * scale),
  ];
  const polyline = (vertices: readonly Vertex[], closed: boolean) => [
    ...head("LWPOLYLINE", "AcDbPolyline"),
    whole(90, vertices.length),
    whole(70, closed ? 1 : 0),
    ...vertices.flatMap(({ x, y, bulge }) => [
      ...flat(x * scale, y * scale),
      ...(bulge === 0 ? [] : [real(42, bulge, 12)]),
    ]),
  ];
  switch (shape.kind) {
    case "loop": {
      const round = isCircle(shape.profile);
      return round ? circle(round.center.x, round.center.y, round.radius) : polyline(shape.profile, true);
    }
    case "chain":
      return polyline(shape.path, false);
    case "round":
      return circle(shape.at.x, shape.at.y, shape.d / 2);
    case "words":
      return [
        ...head("TEXT", "AcDbText"),
        ...place(10, shape.at.x * scale, shape.at.y * scale),
        real(40, shape.height * scale),
        [1, dxfText(shape.text)],
        [100, "AcDbText"],
      ];
  }
}

/** The dictionary at the root of all objects, and in it the one of groups, which has none. */
function objects(handles: Handles): readonly Tag[] {
  const root = handles.next();
  const groups = handles.next();
  const dictionary = (handle: string, owner: string): readonly Tag[] => [
    [0, "DICTIONARY"],
    [5, handle],
    [330, owner],
    [100, "AcDbDictionary"],
    whole(281, 1),
  ];
  return [...dictionary(root, "0"), [3, "ACAD_GROUP"], [350, groups], ...dictionary(groups, root)];
}
