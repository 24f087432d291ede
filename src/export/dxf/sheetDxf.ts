import { toolSize } from "../../drawing/sizes.js";
import { rectangle } from "../../geometry/shapes.js";
import type { Build, NestedSheet, Placed } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { toSheet } from "../../nest/placed.js";
import { dxfBytes } from "./drawing.js";
import { featureColumns, featureRows } from "./featureTable.js";
import { cautionLines, headLines, notesOf } from "./headLines.js";
import { nameShape, partTitle } from "./partDxf.js";
import { partShapes } from "./partShapes.js";
import { layOnSheet, type Shape } from "./shape.js";
import { type Beside, besideShapes } from "./tableShapes.js";

/** One sheet in its own frame: the board, what is trimmed off, and every part where the nest laid it. */
export function sheetDxf(build: Build, sheet: NestedSheet): Uint8Array {
  const { job, plan } = build;
  const parts = sheet.placed.flatMap((placed) => {
    const part = plan.built.parts.find(({ id }) => id === placed.part);
    return part === undefined ? [] : [{ part, placed }];
  });
  const laid = parts.flatMap(({ part, placed }) => partOnSheet(part, placed));
  const beside = besideShapes({ min: { x: 0, y: 0 }, max: { x: sheet.length, y: sheet.width } }, [
    { lines: [...sheetLines(build, sheet), ...headLines(build)], table: [] },
    ...parts.map(({ part, placed }) => partBlock(build, part, placed)),
    { lines: cautionLines(build), table: [] },
  ]);
  return dxfBytes({
    shapes: [...boardShapes(sheet), ...laid, ...beside],
    notes: notesOf(build, `sheet ${sheet.sheet}`),
    show: job.show,
  });
}

/** A part where it lies: its shapes and its name, sheet frame. */
export function partOnSheet(part: Part, placed: Placed): readonly Shape[] {
  const to = toSheet(part, placed);
  return [...partShapes(part).map((shape) => layOnSheet(shape, to)), nameShape(part, to.region(part.profile))];
}

/** The sheet and what is trimmed off it. */
export function boardShapes({ length, width, trim }: NestedSheet): readonly Shape[] {
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

function partBlock({ job, plan, process }: Build, part: Part, placed: Placed): Beside {
  const how = process.parts.find((each) => each.part === part.id);
  return {
    lines: [
      `${partTitle(part)}: lies ${placed.backUp ? "BACK up, mirrored" : "face up"}, cut by ${how?.method ?? "?"}`,
    ],
    table: [featureColumns, ...featureRows(part, how, plan.built.axes, job.show)],
  };
}
