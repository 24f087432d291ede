import type { Build } from "../model/build.js";
import { termsInWords, volumeInWords } from "../model/volume.js";
import { type Block, paragraph, setBlocks } from "./blocks.js";
import { type Draft, type Rooms, roomsOf, spilledPages } from "./draft.js";
import { counted, partCount } from "./partName.js";
import { pageSizeFor } from "./sheetFrame.js";
import { sheetSource } from "./sheetWords.js";

/** A caution as it is printed: what it says, what of this job it is about, and the sentence that ends it. */
export type PrintedCaution = {
  readonly sentence: string;
  readonly about: readonly string[];
  readonly closing: string;
};

const title = "Read before you cut";
const heights = [3.5, 3, 2.7];

/** The first sheet: what can hurt someone in this job, and beside it what the job is. */
export function cautionPages(build: Build, cautions: readonly PrintedCaution[]): readonly Draft[] {
  const size = pageSizeFor(build.job.show, "small");
  const rooms = roomsOf(size);
  const width = rooms.view.max.x - rooms.view.min.x;
  const blocks = (height: number) => [
    paragraph(title, width, { height: 5, bold: true }, 3),
    ...cautionBlocks(cautions, width, height),
  ];
  const draft = { title, documentType: "cautions", numberTail: "0", size };
  // As large as goes on one sheet; a second sheet before letters that are hard to read.
  const height = heights.find((each) => setBlocks(blocks(each), rooms.view).rest.length === 0) ?? heights.at(-1)!;
  const words = setBlocks(overview(build, rooms), rooms.column);
  return [...pour(blocks(height), draft, rooms, words.items), ...spilledPages(words.rest, draft)];
}

function cautionBlocks(cautions: readonly PrintedCaution[], width: number, height: number): readonly Block[] {
  const closings = [...new Set(cautions.map(({ closing }) => closing))];
  return [
    ...cautions.flatMap(({ sentence, about }) => [
      paragraph(sentence, width, { height }, about.length > 0 ? 0.5 : height),
      ...(about.length > 0 ? [paragraph(`In this job: ${about.join("; ")}`, width, {}, height)] : []),
    ]),
    ...closings.map((closing) => paragraph(closing, width, { height, bold: true })),
  ];
}

function overview(build: Build, { column }: Rooms): readonly Block[] {
  const width = column.max.x - column.min.x;
  const { plan, layout, program, job } = build;
  const stopped = program.withheld ?? [];
  const lines = [
    `${partCount(plan.built.parts.length)} in ${counted(new Set(plan.built.parts.map(({ piece }) => piece)).size, "piece")}`,
    ...plan.built.air.map(
      (air) => `Air in ${air.name}: ${volumeInWords(air, job.show)} (${termsInWords(air, job.show)})`,
    ),
    ...layout.sheets.map((sheet) => `Sheet ${sheet.sheet}: ${sheetSource(sheet)}`),
    ...(layout.left.length === 0 ? [] : [`No sheet takes: ${layout.left.join(", ")}`]),
    ...(plan.withheld.length === 0 ? [] : [`Not made, see the findings: ${plan.withheld.join(", ")}`]),
    ...(stopped.length === 0 ? [] : [`No program, see the findings: ${stopped.join(", ")}`]),
    findingsLine(build),
  ];
  return [
    paragraph(job.title, width, { height: 5, bold: true }, 2),
    ...lines.map((line) => paragraph(line, width, { height: 3.5 })),
  ];
}

/** "1 warning, 2 notes: see the findings". */
function findingsLine({ findings }: Build): string {
  const counts = (["error", "warning", "note"] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [counted(count, severity)];
  });
  return counts.length === 0 ? "No findings" : `${counts.join(", ")}: see the findings`;
}

function pour(
  blocks: readonly Block[],
  draft: Omit<Draft, "items">,
  rooms: Rooms,
  around: Draft["items"],
): readonly Draft[] {
  const { items, rest } = setBlocks(blocks, rooms.view);
  const page = { ...draft, items: [...around, ...items] };
  return rest.length === 0 ? [page] : [page, ...pour(rest, draft, rooms, around)];
}
