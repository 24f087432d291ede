import type { Build } from "../model/build.js";
import type { PartId } from "../model/ids.js";
import { type Block, type Column, paragraph, rule, setBlocks, stacked, tableHead, tableRow } from "./blocks.js";
import { type Draft, type Rooms, roomsOf, spilledPages } from "./draft.js";
import { counted } from "./partName.js";
import { inRuns } from "./runs.js";
import { pageSizeFor } from "./sheetFrame.js";

/** A step of the work as it is printed: whose it is, what is done, with which parts, and what can hurt there. */
export type PrintedStep = {
  readonly piece: string;
  readonly words: string;
  readonly parts: readonly PartId[];
  readonly cautions: readonly string[];
};

const title = "Order of work";
/** Letters as large as go on one page. */
const heights = [3.5, 3, 2.7];

/** What is done at the bench, step by step; none where nothing is put together. */
export function orderPages(steps: readonly PrintedStep[], build: Build, closing: string): readonly Draft[] {
  if (steps.length === 0) return [];
  const size = pageSizeFor(build.job.show, "small");
  const rooms = roomsOf(size);
  const draft = { title, documentType: "order of work", numberTail: "W", size };
  const beside = setBlocks(besideBlocks(steps, closing, rooms), rooms.column);
  const tables = heights.map((height) => tableOf(steps, build, rooms, height));
  const table = tables.find((each) => pour(each, roomHeight(rooms)).length === 1) ?? tables.at(-2)!;
  const drawn = evenly(table, roomHeight(rooms)).map((rows, i) => ({
    ...draft,
    title: i === 0 ? title : `${title}, continued`,
    items: [...(i === 0 ? beside.items : []), ...setBlocks([table.head, ...rows], rooms.view).items],
  }));
  return [...drawn, ...spilledPages(beside.rest, draft)];
}

type Table = { readonly head: Block; readonly rows: readonly Block[] };

function tableOf(steps: readonly PrintedStep[], build: Build, { view }: Rooms, height: number): Table {
  const width = view.max.x - view.min.x;
  const several = new Set(steps.map(({ piece }) => piece)).size > 1;
  const columns: readonly Column[] = [
    { title: "step", width: 0.08 * width },
    ...(several ? [{ title: "of", width: 0.11 * width }] : []),
    { title: "what to do", width: (several ? 0.64 : 0.75) * width },
    { title: "parts", width: 0.17 * width },
  ];
  const told = new Map<string, number>();
  const rows = steps.map(({ piece, words, parts, cautions }, i) => {
    const row = tableRow(columns, [`${i + 1}`, ...(several ? [piece] : []), words, partsIn(parts, build)], { height });
    const minded = cautions.map((sentence) => {
      const before = told.get(sentence);
      if (before === undefined) told.set(sentence, i + 1);
      return before === undefined ? sentence : undefined;
    });
    const again = [...new Set(cautions.map((sentence) => told.get(sentence)!).filter((at) => at !== i + 1))];
    const lines = [
      ...minded.filter((sentence) => sentence !== undefined),
      ...(again.length > 0 ? [`Mind what step ${inRuns(again.map(String))} says.`] : []),
    ];
    const indent = columns.slice(0, -2).reduce((sum, column) => sum + column.width, 0);
    return stacked([
      row,
      ...lines.map((line) => indented(paragraph(line, width - indent, { height: 2.5, bold: true }, 0.5), indent)),
      gap,
    ]);
  });
  return { head: tableHead(columns), rows };
}

/** Room between two steps. */
const gap: Block = { height: 1.5, draw: () => [] };

const indented = ({ height, draw }: Block, by: number): Block => ({
  height,
  draw: ({ x, y }) => draw({ x: x + by, y }),
});

function partsIn(ids: readonly PartId[], { plan }: Build): string {
  const numbers = plan.built.parts.filter(({ id }) => ids.includes(id)).map(({ number }) => number);
  return inRuns(numbers);
}

function besideBlocks(steps: readonly PrintedStep[], closing: string, { column }: Rooms): readonly Block[] {
  const width = column.max.x - column.min.x;
  return [
    paragraph(title, width, { height: 5, bold: true }, 2),
    paragraph(
      `${counted(steps.length, "step")} at the bench, when the parts are cut. Numbers are those of the cut list.`,
      width,
      { height: 3 },
      1.5,
    ),
    rule(width),
    paragraph(closing, width, { bold: true }),
    paragraph("All cautions stand on sheet 1.", width, { bold: true }),
  ];
}

const roomHeight = ({ view }: Rooms): number => view.max.y - view.min.y;

/** Rows by page, each page filled up to a height with the table's head on it. */
function pour({ head, rows }: Table, height: number): readonly (readonly Block[])[] {
  const pages: Block[][] = [];
  let left = 0;
  for (const row of rows) {
    if (pages.length === 0 || row.height > left) {
      pages.push([]);
      left = height - head.height;
    }
    pages.at(-1)!.push(row);
    left -= row.height;
  }
  return pages;
}

/** On no more pages than are needed, and each about as full: no page for one line. */
function evenly(table: Table, height: number): readonly (readonly Block[])[] {
  const pages = pour(table, height).length;
  const tried = Array.from({ length: 40 }, (_, i) => height * ((i + 1) / 40));
  const least = tried.find((each) => pour(table, each).length === pages) ?? height;
  return pour(table, least);
}
