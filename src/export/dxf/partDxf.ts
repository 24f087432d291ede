import { toolSize } from "../../drawing/sizes.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Build } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { featureColumns, featureRows } from "../shapes/featureTable.js";
import { cautionLines, headLines } from "../shapes/headLines.js";
import { nameShape, partTitle } from "../shapes/nameShape.js";
import { partShapes } from "../shapes/partShapes.js";
import { dxfBytes } from "./drawing.js";
import { notesOf } from "./notes.js";
import { besideShapes } from "./tableShapes.js";

/** One part in its own frame, seen from the face, with its table beside it. */
export function partDxf(build: Build, part: Part): Uint8Array {
  const { job, plan, process } = build;
  const how = process.parts.find((each) => each.part === part.id);
  const shapes = [...partShapes(part), nameShape(part, part.profile)];
  const beside = besideShapes(extentsOf(part.blank), [
    {
      lines: [
        partTitle(part),
        `board ${part.board}, ${toolSize(part.thickness, job.show)} thick`,
        "seen from the face; BACK layers are drawn in this same view, not mirrored",
        ...headLines(build),
      ],
      table: [featureColumns, ...featureRows(part, how, plan.built.axes, job.show)],
    },
    { lines: cautionLines(build), table: [] },
  ]);
  return dxfBytes({
    shapes: [...shapes, ...beside],
    notes: notesOf(build, partTitle(part)),
    show: job.show,
    format: build.shop.dxf,
  });
}
