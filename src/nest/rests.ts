import type { NestedSheet, Process } from "../model/build.js";
import type { Part } from "../model/part.js";
import type { SawnPiece } from "../model/rip.js";
import type { Shop } from "../model/shop.js";
import { leastOffcut } from "./remainder.js";
import { isLargeEnough, type Size, sameSize } from "./saw/handling.js";
import { sawingOf } from "./saw/sawing.js";
import { leavesOf } from "./saw/sawnSheets.js";
import { laidOn, withStripBevels } from "./saw/stripBevels.js";
import type { StockRow } from "./stock.js";

/**
 * What sawn sheets leave whole, as stock for the machine, at no cost: every piece that would be worth keeping as an
 * offcut, as it lay on its sheet, so that its grain and its lower left corner are known. A piece that is sawn on all four
 * sides is used to its edges; one that has an edge of the sheet itself keeps that sheet's trim. What is left of a strip
 * that is bevelled as a whole stays with the saw.
 */
export function restRows(
  sheets: readonly NestedSheet[],
  parts: readonly Part[],
  process: Pick<Process, "parts">,
  shop: Shop,
): readonly StockRow[] {
  const least = leastOffcut(shop);
  const laid = laidOn(sheets, parts, process);
  return sheets.flatMap((sheet) => {
    const pieces = sheet.sawn ? squareLeaves(withStripBevels(sheet.sawn, laid, sawingOf(shop))) : [];
    return pieces.filter(({ part }) => part === undefined).flatMap((piece) => restRow(piece, sheet, least));
  });
}

function restRow(piece: SawnPiece, sheet: NestedSheet, least: Size): readonly StockRow[] {
  const { x, y, length, width } = piece;
  const trim = isSawnAllRound(piece, sheet) ? 0 : sheet.trim;
  if (!isLargeEnough({ length: length - 2 * trim, width: width - 2 * trim }, least)) return [];
  const measured = sheet.measured === undefined ? {} : { measured: sheet.measured };
  const restOf = { sheet: sheet.sheet, x, y };
  const row = { name: `rest of ${sheet.sheet}`, length, width, trim, count: 1, cost: 0, onHand: false, restOf };
  return [{ ...row, ...measured }];
}

/** The pieces that remain, but those of bevelled strips. */
const squareLeaves = (piece: SawnPiece): readonly SawnPiece[] => {
  if (piece.bevels) return [];
  return piece.cut ? [piece.cut.off, piece.cut.rest].flatMap((each) => (each ? squareLeaves(each) : [])) : [piece];
};

function isSawnAllRound({ x, y, length, width }: SawnPiece, sheet: NestedSheet): boolean {
  const least = Math.min(x, y, sheet.length - x - length, sheet.width - y - width);
  return least > sheet.trim - sameSize;
}

/** The sheets, each sawn one with the names of those that its pieces go on as, and no others. */
export function handedOn(sheets: readonly NestedSheet[]): readonly NestedSheet[] {
  return sheets.map((sheet) => {
    if (!sheet.sawn) return sheet;
    const rests = sheets.filter(({ restOf }) => restOf?.sheet === sheet.sheet);
    return { ...sheet, sawn: withNames(sheet.sawn, rests) };
  });
}

function withNames({ goesOn: _before, ...piece }: SawnPiece, rests: readonly NestedSheet[]): SawnPiece {
  if (piece.cut) {
    const { off, rest, ...cut } = piece.cut;
    const both = { ...(off && { off: withNames(off, rests) }), ...(rest && { rest: withNames(rest, rests) }) };
    return { ...piece, cut: { ...cut, ...both } };
  }
  const goesOn = piece.part === undefined ? rests.find(({ restOf }) => isAt(piece, restOf!)) : undefined;
  return goesOn ? { ...piece, goesOn: goesOn.sheet } : piece;
}

const isAt = (a: { readonly x: number; readonly y: number }, b: { readonly x: number; readonly y: number }): boolean =>
  Math.abs(a.x - b.x) < sameSize && Math.abs(a.y - b.y) < sameSize;

/** The pieces of a sheet that go on as others. */
export const goingOn = ({ sawn }: NestedSheet): readonly SawnPiece[] =>
  sawn ? leavesOf(sawn).filter((piece) => piece.goesOn !== undefined) : [];
