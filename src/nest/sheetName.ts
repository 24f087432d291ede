import type { NestedSheet } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import type { StockRow } from "./stock.js";

/** "box 2", "box offcut A", "box 2 rest"; never a name that is taken, also where a file system does not tell A from a. */
export function sheetName(board: BoardId, row: StockRow, others: readonly NestedSheet[]): string {
  const taken = new Set(others.map((sheet) => sheet.sheet.toLowerCase()));
  const nth = (n: number) => {
    if (row.restOf !== undefined) return n === 1 ? `${row.restOf.sheet} rest` : `${row.restOf.sheet} rest ${n}`;
    if (row.offcut === undefined) return `${board} ${n}`;
    return n === 1 ? `${board} offcut ${row.offcut}` : `${board} offcut ${row.offcut} (${n})`;
  };
  let n = 1;
  while (taken.has(nth(n).toLowerCase())) n++;
  return nth(n);
}
