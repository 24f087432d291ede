import type { Build, Exporter, NestedSheet, OutputFile } from "../../model/build.js";
import type { Part } from "../../model/part.js";
import { remainderOf } from "../../nest/remainder.js";
import { boardOf } from "../../shop/clearArea.js";
import { programsOf } from "../gcode/gcodeFiles.js";
import { outputNames } from "../outputNames.js";
import { featureColumns, featureRows } from "../shapes/featureTable.js";
import { cautionLines, headLines } from "../shapes/headLines.js";
import { nameShape, partTitle } from "../shapes/nameShape.js";
import { partShapes } from "../shapes/partShapes.js";
import { boardShapes, partOnSheet, restShapes, setupBoard, sheetLines } from "../shapes/sheetShapes.js";
import { cutSvg } from "./cutSvg.js";
import { svgOfShapes } from "./svgOfShapes.js";

/** Line drawings in real millimetres, whatever the job shows: every sheet as nested, every part by itself. */
export const svgExporter: Exporter = {
  format: "svg",
  write: async (build) => [...(await sheetFiles(build)), ...(await cutFiles(build)), ...(await partFiles(build))],
};

function sheetFiles(build: Build): Promise<readonly OutputFile[]> {
  const { sheets } = outputNames(build);
  return Promise.all(
    build.layout.sheets.map(async (sheet, i) => ({
      path: `sheets/${sheets[i]}.svg`,
      bytes: await sheetSvg(build, sheet),
    })),
  );
}

/** What the machine does to each sheet, drawn from the words of its programs. */
function cutFiles(build: Build): Promise<readonly OutputFile[]> {
  const { setups } = outputNames(build);
  const { cnc } = build.shop;
  if (cnc === undefined) return Promise.resolve([]);
  return Promise.all(
    build.program.setups.map(async (setup, i) => {
      const texts = programsOf(build, setup, cnc, "").map(({ text }) => text);
      const board = setupBoard(build, setup);
      const top = cnc.zero === "bed" ? setup.thickness : 0;
      const about = { title: `cuts of ${setup.name}`, description: cutLines(build) };
      return {
        path: `sheets/${setups[i]}-cut.svg`,
        bytes: await cutSvg(setup, boardOf(board), board.zones ?? [], texts, top, about),
      };
    }),
  );
}

function cutLines(build: Build): readonly string[] {
  const how = "drawn from the program: the deeper the darker, tabs lighter, parts red, ways in the air dashed";
  return [how, ...tellOf(build)];
}

function partFiles(build: Build): Promise<readonly OutputFile[]> {
  const { parts } = outputNames(build);
  return Promise.all(
    build.plan.built.parts.map(async (part) => ({
      path: `parts/${parts.get(part.id)}.svg`,
      bytes: await partSvg(build, part),
    })),
  );
}

function partSvg(build: Build, part: Part): Promise<Uint8Array> {
  return svgOfShapes([...partShapes(part), nameShape(part, part.profile)], {
    title: partTitle(part),
    description: [
      "seen from the face; BACK layers are drawn in this same view, not mirrored",
      ...tellOf(build),
      ...tableLines(build, part),
    ],
  });
}

function sheetSvg(build: Build, sheet: NestedSheet): Promise<Uint8Array> {
  const lying = sheet.placed.flatMap((placed) => {
    const part = build.plan.built.parts.find(({ id }) => id === placed.part);
    return part === undefined ? [] : [{ part, placed }];
  });
  const rest = remainderOf(sheet, build.plan.built.parts, build.process, build.shop);
  const laid = lying.flatMap(({ part, placed }) => partOnSheet(part, placed));
  return svgOfShapes([...boardShapes(sheet), ...restShapes(sheet, rest, build.job.show), ...laid], {
    title: `sheet ${sheet.sheet}`,
    description: [
      ...sheetLines(build, sheet),
      "LEFT-OVER and SIZE layers say what remains and how large things are: they are not cut",
      ...tellOf(build),
      ...lying.flatMap(({ part }) => [partTitle(part), ...tableLines(build, part)]),
    ],
  });
}

/** What every file says: the job, its cautions and its build's hash. */
function tellOf(build: Build): readonly string[] {
  const metric = { ...build, job: { ...build.job, show: { unit: "mm" as const } } };
  return [...headLines(metric), ...cautionLines(build)];
}

/** How deep, from which side and with what each thing is cut: lines do not say it. */
function tableLines({ plan, process, job }: Build, part: Part): readonly string[] {
  const how = process.parts.find((each) => each.part === part.id);
  return [featureColumns, ...featureRows(part, how, plan.built.axes, job.show)].map((row) => row.join(" | "));
}
