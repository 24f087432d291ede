import type { Build } from "../../model/build.js";
import type { Setup } from "../../model/program.js";
import { cautionLines, headLines } from "../shapes/headLines.js";
import type { Shape } from "../shapes/shape.js";
import { boardShapes, setupBoard } from "../shapes/sheetShapes.js";
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
  const shapes = [...boardShapes(setupBoard(build, setup)), ...parts, ...toolShapes(setup), ...beside];
  return dxfBytes({ shapes, notes: notesOf(build, setup.name), show: build.job.show, format: build.shop.dxf });
}
