import type { Build } from "../model/build.js";
import type { BoardId, PartId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { Method } from "../model/shop.js";
import { type Block, type Column, paragraph, rule, setBlocks, tableHead, tableRow } from "./blocks.js";
import { type Draft, roomsOf, spilledPages } from "./draft.js";
import { showFor } from "./handShow.js";
import { massKg, massWords } from "./mass.js";
import { methodWords } from "./methodWords.js";
import { namesOf, partCount } from "./partName.js";
import { inRuns } from "./runs.js";
import { pageSizeFor } from "./sheetFrame.js";
import { sheetSource } from "./sheetWords.js";
import { overallSize, sizePair, toolSize } from "./sizes.js";
import { sizesToFit } from "./toFit.js";

/** A row of the cut list: parts that are cut alike. Sizes of the bare board, mm, length along the grain if there is one. */
export type ListedParts = {
  readonly numbers: readonly string[];
  readonly parts: readonly PartId[];
  readonly board: BoardId;
  readonly asCut: { readonly length: number; readonly width: number };
  readonly method: Method | undefined;
};

/** The cut list: a row for each kind of part, with the sheets they lie on beside it. */
export function listPages(rows: readonly ListedParts[], build: Build): readonly Draft[] {
  const size = pageSizeFor(build.job.show, "small");
  const rooms = roomsOf(size);
  const columns = columnsFor(rooms.view.max.x - rooms.view.min.x);
  const head = tableHead(columns);
  const words = setBlocks(stockBlocks(build, rooms.column.max.x - rooms.column.min.x), rooms.column);
  const lines = rows.map((row) => tableRow(columns, cellsOf(row, build), { height: 3 }));
  const draft = { title: "Cut list", documentType: "cut list", numberTail: "L", size };
  const listed = pages(lines).map((items, i) => ({
    ...draft,
    title: i === 0 ? draft.title : `${draft.title}, continued`,
    items: [...words.items, ...items],
  }));
  return [...listed, ...spilledPages(words.rest, draft)];

  function pages(rest: readonly Block[]): readonly Draft["items"][] {
    const set = setBlocks([head, ...rest], rooms.view);
    return set.rest.length === 0 ? [set.items] : [set.items, ...pages(set.rest)];
  }
}

function columnsFor(width: number): readonly Column[] {
  const share = (part: number) => part * width;
  return [
    { title: "no.", width: share(0.11) },
    { title: "off", width: share(0.07), align: "right" },
    { title: "part", width: share(0.22) },
    { title: "length", width: share(0.15), align: "right" },
    { title: "width", width: share(0.15), align: "right" },
    { title: "board", width: share(0.12) },
    { title: "cut by", width: share(0.18) },
  ];
}

function cellsOf(row: ListedParts, build: Build): readonly string[] {
  const parts = build.plan.built.parts.filter(({ id }) => row.parts.includes(id));
  return [
    inRuns(row.numbers),
    `${row.parts.length}`,
    namesOf(parts),
    listedSize(row.asCut.length, row.method, build),
    listedSize(row.asCut.width, row.method, build),
    row.board,
    row.method ? `${methodWords[row.method]}${isFitted(parts, build) ? ", to fit" : ""}` : "not cut",
  ];
}

const isFitted = ([first]: readonly Part[], build: Build) => first !== undefined && sizesToFit(first, build).length > 0;

/** With its unit where that is not the job's. */
function listedSize(mm: number, method: Method | undefined, build: Build): string {
  const show = showFor(method, build);
  const bare = show.unit === "in" || build.job.show.unit === "mm";
  return bare ? overallSize(mm, show) : `${overallSize(mm, show)} mm`;
}

function stockBlocks(build: Build, width: number): readonly Block[] {
  const { job, shop, plan, layout } = build;
  const total = plan.built.parts.reduce((sum, part) => sum + (massKg(part, job, shop) ?? 0), 0);
  const boards = Object.entries(job.boards).filter(([name]) => plan.built.parts.some(({ board }) => board === name));
  return [
    paragraph("Cut list", width, { height: 5, bold: true }),
    paragraph("Sizes of the bare board over all; with a grain, length runs along it", width),
    rule(width),
    ...boards.map(([name, { stock, measured }]) => {
      const row = shop.boards[stock];
      const thick = measured ?? row?.measured ?? row?.thickness;
      const words = (measured ?? row?.measured) === undefined ? "nominal" : "measured";
      const size = thick === undefined ? "" : `, ${words} ${toolSize(thick, job.show)} thick`;
      return paragraph(`Board ${name}: ${stock}${size}`, width);
    }),
    rule(width),
    ...layout.sheets.map((sheet) => {
      const size = sizePair(sheet.length, sheet.width, job.show);
      return paragraph(
        `Sheet ${sheet.sheet}: ${size}, ${partCount(sheet.placed.length)}, ${sheetSource(sheet)}`,
        width,
      );
    }),
    rule(width),
    paragraph(`All parts bare: ${massWords(total, job.show)}`, width, { bold: true }),
  ];
}
