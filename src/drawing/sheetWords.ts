import { areaOfRegion, extentsOf } from "../geometry/measure.js";
import { formatNumber } from "../input/number.js";
import type { Show } from "../input/show.js";
import type { Build, NestedSheet, Placed } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { Rectangle } from "../nest/clearRectangle.js";
import { type Block, type Column, oneLine, paragraph, rule, tableHead, tableRow } from "./blocks.js";
import { partName } from "./partName.js";
import type { Lying } from "./sheetView.js";
import { degrees, runningSize, sizePair, toolSize } from "./sizes.js";

/** "sheet to buy", "offcut A, in the rack". */
export function sheetSource({ offcut, onHand }: NestedSheet): string {
  if (offcut !== undefined) return `offcut ${offcut}, in the rack`;
  return onHand ? "whole sheet, in the rack" : "whole sheet, to buy";
}

/** The column beside a nested sheet: which sheet, what is left of it, how each part lies. */
export function sheetWords(
  sheet: NestedSheet,
  lying: readonly Lying[],
  left: Rectangle | undefined,
  build: Build,
  width: number,
): readonly Block[] {
  const { job, shop } = build;
  const stock = job.boards[sheet.board]?.stock ?? "";
  const columns: readonly Column[] = [
    { title: "no.", width: width * 0.12 },
    { title: "part", width: width * 0.4 },
    { title: "size", width: width * 0.28 },
    { title: "lies", width: width * 0.2 },
  ];
  return [
    oneLine(`Sheet ${sheet.sheet}`, width, { height: 5, bold: true }),
    paragraph(`${shop.boards[stock]?.material ?? stock} (board ${sheet.board}, ${stock})`, width, { height: 3.5 }),
    paragraph(sheetSource(sheet), width, { height: 3.5 }),
    paragraph(
      `${sizePair(sheet.length, sheet.width, job.show)}, ${toolSize(sheet.trim, job.show)} left free all round`,
      width,
    ),
    ...usedAndLeft(sheet, lying, left, job.show).map((words) => paragraph(words, width)),
    rule(width),
    tableHead(columns),
    ...lying.map(({ part, placed }) => tableRow(columns, partCells(part, placed, job.show))),
  ];
}

function partCells(part: Part, placed: Placed, show: Show): readonly string[] {
  const { min, max } = extentsOf(part.blank.outer);
  const lies = [placed.turn === 0 ? "" : `turned ${degrees(placed.turn)}`, placed.backUp ? "back up" : ""];
  return [
    part.number,
    partName(part),
    `${runningSize(max.x - min.x, show)} × ${runningSize(max.y - min.y, show)}`,
    lies.filter(Boolean).join(", ") || "face up",
  ];
}

/** How much of the sheet the parts take, and the largest piece that stays whole. */
function usedAndLeft(
  sheet: NestedSheet,
  lying: readonly Lying[],
  left: Rectangle | undefined,
  show: Show,
): readonly string[] {
  const used = lying.reduce((sum, { part }) => sum + areaOfRegion({ outer: part.blank.outer, holes: [] }), 0);
  const share = formatNumber((100 * used) / (sheet.length * sheet.width), 0);
  const whole = left === undefined ? "no piece" : `${sizePair(left.length, left.width, show)} (dashed)`;
  return [`Parts take ${share} % of the sheet`, `Left over in one piece: ${whole}`];
}
