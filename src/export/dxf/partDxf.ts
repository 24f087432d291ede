import { toolSize } from "../../drawing/sizes.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Region } from "../../geometry/profile.js";
import type { Build } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { dxfBytes } from "./drawing.js";
import { featureColumns, featureRows } from "./featureTable.js";
import { cautionLines, headLines, notesOf } from "./headLines.js";
import { labelPlace } from "./labelPlace.js";
import { partShapes } from "./partShapes.js";
import { type Shape, widthOfWords } from "./shape.js";
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
  return dxfBytes({ shapes: [...shapes, ...beside], notes: notesOf(build, partTitle(part)), show: job.show });
}

export function partTitle(part: Part): string {
  return `${part.number} ${part.id}`;
}

/** The part's number and role, as large as there is room for on the part; `region`: its profile, where it lies. */
export function nameShape(part: Part, region: Region): Shape {
  const { at, clear } = labelPlace(region);
  const text = `${part.number} ${part.role}`;
  const height = Math.max(2, Math.min(20, clear / 3, (1.8 * clear) / widthOfWords(text, 1)));
  const x = at.x - widthOfWords(text, height) / 2;
  return { kind: "words", layer: "NAME", at: { x, y: at.y - height / 2 }, height, text };
}
