import { toolSize } from "../../drawing/sizes.js";
import { rectangle } from "../../geometry/shapes.js";
import type { Build, NestedSheet, Placed } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { toSheet } from "../../nest/placed.js";
import { nameShape } from "./nameShape.js";
import { partShapes } from "./partShapes.js";
import { layOnSheet, type Shape } from "./shape.js";

/** A part where it lies: its shapes and its name, sheet frame. */
export function partOnSheet(part: Part, placed: Placed): readonly Shape[] {
  const to = toSheet(part, placed);
  return [...partShapes(part).map((shape) => layOnSheet(shape, to)), nameShape(part, to.region(part.profile))];
}

/** The sheet and what is trimmed off it. */
export function boardShapes({ length, width, trim }: Pick<NestedSheet, "length" | "width" | "trim">): readonly Shape[] {
  const edge: Shape = { kind: "loop", layer: "SHEET", profile: rectangle(0, 0, length, width, "sheet") };
  const inner = rectangle(trim, trim, length - trim, width - trim, "trim");
  return trim > 0 ? [edge, { kind: "loop", layer: "TRIM", profile: inner }] : [edge];
}

export function sheetLines({ job }: Build, sheet: NestedSheet): readonly string[] {
  const size = (mm: number) => toolSize(mm, job.show);
  return [
    `sheet ${sheet.sheet}, board ${sheet.board}, ${size(sheet.length)} x ${size(sheet.width)}`,
    "zero is the lower left corner of the sheet; x runs along its length",
    "where a part lies back up, its BACK layers are cut from above and its FACE layers from below",
  ];
}
