import type { Build, NestedSheet, Placed } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { featureColumns, featureRows } from "../shapes/featureTable.js";
import { cautionLines, headLines } from "../shapes/headLines.js";
import { partTitle } from "../shapes/nameShape.js";
import { boardShapes, partOnSheet, sheetLines } from "../shapes/sheetShapes.js";
import { toolLines, toolShapes } from "../shapes/toolShapes.js";
import { dxfBytes } from "./drawing.js";
import { notesOf } from "./notes.js";
import { type Beside, besideShapes } from "./tableShapes.js";

/** One sheet in its own frame: the board, what is trimmed off, every part where the nest laid it, and, where the machine
 *  cuts it, the way of each bit's middle. */
export function sheetDxf(build: Build, sheet: NestedSheet): Uint8Array {
  const { job, plan } = build;
  const parts = sheet.placed.flatMap((placed) => {
    const part = plan.built.parts.find(({ id }) => id === placed.part);
    return part === undefined ? [] : [{ part, placed }];
  });
  const setup = build.program.setups.find(({ name }) => name === sheet.sheet);
  const laid = parts.flatMap(({ part, placed }) => partOnSheet(part, placed));
  const beside = besideShapes({ min: { x: 0, y: 0 }, max: { x: sheet.length, y: sheet.width } }, [
    { lines: [...sheetLines(build, sheet), ...headLines(build)], table: [] },
    { lines: setup ? toolLines(build, setup) : [], table: [] },
    ...parts.map(({ part, placed }) => partBlock(build, part, placed)),
    { lines: cautionLines(build), table: [] },
  ]);
  return dxfBytes({
    shapes: [...boardShapes(sheet), ...laid, ...(setup ? toolShapes(setup) : []), ...beside],
    notes: notesOf(build, `sheet ${sheet.sheet}`),
    show: job.show,
    format: build.shop.dxf,
  });
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
