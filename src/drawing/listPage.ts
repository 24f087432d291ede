import { extentsOf } from "../geometry/measure.js";
import { formatNumber } from "../input/number.js";
import type { Build } from "../model/build.js";
import type { Part } from "../model/part.js";
import { type Block, type Column, paragraph, rule, setBlocks, tableHead, tableRow } from "./blocks.js";
import type { Draft } from "./draft.js";
import { roomsOf } from "./draft.js";
import { massKg, massWords } from "./mass.js";
import { type SameParts, sameParts } from "./sameParts.js";
import { pageSizeFor } from "./sheetFrame.js";
import { overallSize, toolSize } from "./sizes.js";

const methodWords = { saw: "saw", hand: "hand router", cnc: "CNC" } as const;

/** The cut list: a row for each kind of part, with the sheets they lie on beside it. */
export function listPages(build: Build): readonly Draft[] {
  const size = pageSizeFor(build.job.show, "small");
  const rooms = roomsOf(size);
  const columns = columnsFor(rooms.view.max.x - rooms.view.min.x);
  const head = tableHead(columns);
  const rows = sameParts(build.plan.built.parts).map((same) => tableRow(columns, cellsOf(same, build)));
  const words = setBlocks(stockBlocks(build, rooms.column.max.x - rooms.column.min.x), rooms.column).items;
  return pages(rows).map((items, i) => ({
    title: i === 0 ? "Cut list" : "Cut list, continued",
    documentType: "cut list",
    numberTail: "L",
    size,
    items: [...words, ...items],
  }));

  function pages(rest: readonly Block[]): readonly Draft["items"][] {
    const set = setBlocks([head, ...rest], rooms.view);
    return set.rest.length === 0 ? [set.items] : [set.items, ...pages(set.rest)];
  }
}

function columnsFor(width: number): readonly Column[] {
  const share = (part: number) => part * width;
  return [
    { title: "no.", width: share(0.1) },
    { title: "off", width: share(0.06), align: "right" },
    { title: "part", width: share(0.21) },
    { title: "length", width: share(0.16), align: "right" },
    { title: "width", width: share(0.16), align: "right" },
    { title: "board", width: share(0.15) },
    { title: "cut by", width: share(0.16) },
  ];
}

function cellsOf({ first, parts }: SameParts, { job, process }: Build): readonly string[] {
  const { length, width } = lengthAndWidth(first);
  const method = process.parts.find(({ part }) => part === first.id)?.method;
  return [
    parts.map(({ number }) => number).join(", "),
    `${parts.length}`,
    `${first.piece} / ${first.role}`,
    overallSize(length, job.show),
    overallSize(width, job.show),
    `${first.board} ${toolSize(first.thickness, job.show)}`,
    method ? methodWords[method] : "not cut",
  ];
}

/** The longer side first; with a grain, the side along it. */
function lengthAndWidth(part: Part): { readonly length: number; readonly width: number } {
  const { min, max } = extentsOf(part.profile.outer);
  const [x, y] = [max.x - min.x, max.y - min.y];
  const alongX = part.grain === undefined ? x >= y : Math.abs(Math.cos(part.grain)) > Math.SQRT1_2;
  return alongX ? { length: x, width: y } : { length: y, width: x };
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
      const words = measured === undefined ? "nominal" : "measured";
      return paragraph(
        `Board ${name}: ${stock}${thick === undefined ? "" : `, ${words} ${toolSize(thick, job.show)} thick`}`,
        width,
      );
    }),
    rule(width),
    ...layout.sheets.map(({ sheet, length, width: across, offcut, placed }) =>
      paragraph(
        `Sheet ${sheet}: ${overallSize(length, job.show)} × ${overallSize(across, job.show)}, ${formatNumber(placed.length, 0)} parts, ${offcut === undefined ? "to buy" : "from the rack"}`,
        width,
      ),
    ),
    rule(width),
    paragraph(`All parts bare: ${massWords(total, job.show)}`, width, { bold: true }),
  ];
}
