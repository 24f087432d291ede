import { areaOf, areaOfRegion, extentsOf } from "../geometry/measure.js";
import { formatNumber } from "../input/number.js";
import type { Show } from "../input/show.js";
import type { Build, Layout, NestedSheet, Placed } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { SawnPiece } from "../model/rip.js";
import type { Remainder } from "../nest/remainder.js";
import { goingOn } from "../nest/rests.js";
import { boardOf } from "../shop/clearArea.js";
import { type Block, type Column, oneLine, paragraph, tableHead, tableRow } from "./blocks.js";
import { partName } from "./partName.js";
import type { Lying } from "./sheetView.js";
import { degrees, runningSize, sizePair, toolSize } from "./sizes.js";

/** "sheet to buy", "offcut A, in the rack", "rest of sheet box 1". */
export function sheetSource({ offcut, onHand, restOf }: NestedSheet): string {
  if (restOf !== undefined) return `rest of sheet ${restOf.sheet}`;
  if (offcut !== undefined) return `offcut ${offcut}, in the rack`;
  return onHand ? "whole sheet, in the rack" : "whole sheet, to buy";
}

/** Which sheet it is and how it is seen, what is kept clear, how much of it the parts take and what is left. */
export function sheetWords(
  sheet: NestedSheet,
  lying: readonly Lying[],
  rest: Remainder,
  { job, shop, layout }: Build,
  seen: string,
  width: number,
): readonly Block[] {
  const { show } = job;
  const stock = job.boards[sheet.board]?.stock ?? "";
  const size = `${sheet.outline ? "of odd form, " : ""}${sizePair(sheet.length, sheet.width, show)}`;
  const sentences = [
    `${shop.boards[stock]?.material ?? stock} (board ${sheet.board}, ${stock}), ${sheetSource(sheet)}`,
    sheet.trim > 0 ? `${size}; ${toolSize(sheet.trim, show)} left free all round` : size,
    ...withinWords(sheet, show),
    ...restWords(sheet, layout),
    seen,
    ...keptClear(sheet),
    ...goingOn(sheet).map((piece) => `${goesOnWords(piece, layout, show)}, dashed`),
    ...usedAndLeft(sheet, lying, rest, show),
  ];
  return [
    oneLine(`Sheet ${sheet.sheet}`, width, { height: 3.5, bold: true }),
    ...sentences.map((words) => paragraph(words, width, {}, 0.5)),
  ];
}

/** Every part on a sheet: its size and how it lies. */
export function sheetList(lying: readonly Lying[], width: number, show: Show): readonly Block[] {
  const columns: readonly Column[] = [
    { title: "no.", width: width * 0.12 },
    { title: "part", width: width * 0.4 },
    { title: "size", width: width * 0.28 },
    { title: "lies", width: width * 0.2 },
  ];
  if (lying.length === 0) return [];
  return [tableHead(columns), ...lying.map(({ part, placed }) => tableRow(columns, partCells(part, placed, show)))];
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

/** Where in its offcut a rectangle lies that a saw has of it. */
function withinWords({ within }: NestedSheet, show: Show): readonly string[] {
  if (within === undefined) return [];
  const place = `${runningSize(within.x, show)}, ${runningSize(within.y, show)}`;
  return [`Lies on the side ${within.side} of its offcut, its lower left corner at ${place} there`];
}

/** Of what another sheet leaves: which piece of the rip list it is, and how it lies. */
function restWords({ sheet, restOf }: NestedSheet, layout: Layout): readonly string[] {
  if (restOf === undefined) return [];
  const piece = pieceName(sheet, layout);
  return [
    `${piece} of sheet ${restOf.sheet}: saw that first. It lies as it lay there, with its lower left corner at the zero`,
  ];
}

/** "Piece 9b goes on to the machine as sheet box 1 rest: 1902 × 1215". */
function goesOnWords({ goesOn = "", length, width }: SawnPiece, layout: Layout, show: Show): string {
  const size = `${runningSize(length, show)} × ${runningSize(width, show)}`;
  return `${pieceName(goesOn, layout)} goes on to the machine as sheet ${goesOn}: ${size}`;
}

/** What the rip list calls the piece that goes on as a sheet: "Piece 9b"; nothing is sawn of one that is a whole sheet. */
function pieceName(sheet: string, { rips }: Layout): string {
  const pieces = rips?.cuts.flatMap(({ off, rest }) => [off, rest]) ?? [];
  const piece = pieces.find((each) => each?.goesOn === sheet);
  return piece === undefined ? "What is left" : `Piece ${piece.name}`;
}

/** "Kept clear, dark: 2 clamps, 1 knot". */
function keptClear({ zones = [] }: NestedSheet): readonly string[] {
  const names = zones.map(([first]) => first?.by ?? "");
  const counts = [...new Set(names)].map((name) => {
    const n = names.filter((one) => one === name).length;
    return `${n} ${name}${n === 1 ? "" : "s"}`;
  });
  return counts.length === 0 ? [] : [`Kept clear, dark: ${counts.join(", ")}`];
}

/** How much of the sheet the parts take, and what is worth keeping. */
function usedAndLeft(sheet: NestedSheet, lying: readonly Lying[], rest: Remainder, show: Show): readonly string[] {
  const used = lying.reduce((sum, { part }) => sum + areaOfRegion({ outer: part.blank.outer, holes: [] }), 0);
  const share = formatNumber((100 * used) / areaOf(boardOf(sheet)), 0);
  const sizes = rest.rectangles.map(
    ({ length, width }) => `${runningSize(length, show)} × ${runningSize(width, show)}`,
  );
  const left =
    sizes.length === 0
      ? `Nothing ${goingOn(sheet).length > 0 ? "else " : ""}left over that is worth keeping`
      : `Left over, hatched: ${sizes.join("; ")}`;
  return [`Parts take ${share} % of the sheet`, left];
}
