import type { Build } from "../../model/build.js";
import type { Setup } from "../../model/program.js";
import { turnedOver } from "../../nest/stockFor.js";
import { cautionLines, headLines } from "../shapes/headLines.js";
import type { Shape } from "../shapes/shape.js";
import { boardShapes } from "../shapes/sheetShapes.js";
import { toolLines, toolShapes } from "../shapes/toolShapes.js";
import { dxfBytes } from "./drawing.js";
import { notesOf } from "./notes.js";
import { besideShapes } from "./tableShapes.js";

/** A sheet that lies turned over: its parts as they are seen there, its pins, and the way of each bit's middle. */
export function turnedDxf(build: Build, setup: Setup): Uint8Array {
  const parts = setup.parts.flatMap(({ profile }): readonly Shape[] => [
    { kind: "loop", layer: "OUTLINE", profile: profile.outer },
    ...profile.holes.map((hole): Shape => ({ kind: "loop", layer: "OPENING", profile: hole })),
  ]);
  const size = { min: { x: 0, y: 0 }, max: { x: setup.length, y: setup.width } };
  const told = `${setup.name}: the sheet lies turned over about its long side, on its pins; zero is the lower left corner`;
  const beside = besideShapes(size, [
    { lines: [told, ...headLines(build), ...toolLines(build, setup)], table: [] },
    { lines: cautionLines(build), table: [] },
  ]);
  const shapes = [...boardShapes(turnedBoard(build, setup)), ...parts, ...toolShapes(setup), ...beside];
  return dxfBytes({ shapes, notes: notesOf(build, setup.name), show: build.job.show, format: build.shop.dxf });
}

/** The sheet as it lies there, with an odd offcut's outline and what parts keep clear of. */
function turnedBoard({ layout }: Build, setup: Setup): Parameters<typeof boardShapes>[0] {
  const { length, width } = setup;
  const sheet = layout.sheets.find((each) => each.sheet === setup.sheet);
  return {
    length,
    width,
    trim: 0,
    ...(sheet?.outline && { outline: turnedOver(sheet.outline, width) }),
    ...(sheet?.zones && { zones: sheet.zones.map((zone) => turnedOver(zone, width)) }),
  };
}
