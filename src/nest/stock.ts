import type { NestedSheet, RestOf, Within } from "../model/build.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { BoardStock, KeptClear, SheetSize, Shop } from "../model/shop.js";
import { zonesOf } from "../shop/zones.js";
import type { NestStock } from "./engine.js";

/** A kind of sheet that a board may use, and what of it the layout must say. */
export type StockRow = NestStock & {
  readonly offcut?: string;
  readonly onHand: boolean;
  /** It is what a sheet leaves that is sawn first. */
  readonly restOf?: RestOf;
  readonly price?: number;
  readonly measured?: number;
  /** What its zones and outline leave for a saw counts by itself, and lies here in it. */
  readonly within?: Within;
  /** The side of an odd offcut that a saw may go by. */
  readonly "true edge"?: string;
};

/** The stock that a board of the job is cut from, if the shop has such a row. */
export function stockOfBoard(job: Job, shop: Shop, board: BoardId): BoardStock | undefined {
  const choice = job.boards[board];
  return choice && shop.boards[choice.stock];
}

/**
 * The sheets and offcuts a board may use, in the order in which the workshop would rather use them: offcuts from the
 * smallest, whole sheets in the rack, then sheets to buy by price per area. What `taken` holds is gone from the rack,
 * also where another board of the job took it from the same stock.
 */
export function rowsFor(job: Job, shop: Shop, board: BoardId, taken: readonly NestedSheet[]): readonly StockRow[] {
  const stock = stockOfBoard(job, shop, board);
  if (!stock) return [];
  const gone = taken.filter((sheet) => stockOfBoard(job, shop, sheet.board) === stock);
  const offcuts = stock.offcuts
    .filter((offcut) => !gone.some((sheet) => sheet.offcut === offcut.name))
    .map(
      (o): StockRow => ({
        ...size(o),
        ...(o.outline && { outline: o.outline }),
        ...(o["true edge"] !== undefined && { "true edge": o["true edge"] }),
        name: `offcut ${o.name}`,
        offcut: o.name,
        onHand: true,
        count: 1,
        cost: 0,
      }),
    );
  const racked = stock.sheets.flatMap((sheet): StockRow[] => {
    const count =
      (sheet["on hand"] ?? 0) -
      gone.filter((one) => one.onHand && one.offcut === undefined && sameSize(one, sheet)).length;
    return count > 0 ? [{ ...size(sheet), name: nameOf(sheet), onHand: true, count, cost: 0 }] : [];
  });
  const dearest = Math.max(0, ...stock.sheets.map((sheet) => (sheet.price ?? 0) / areaOf(sheet)));
  const bought = stock.sheets.map((sheet): StockRow => {
    const cost = sheet.price || areaOf(sheet) * (dearest || 1);
    return {
      ...size(sheet),
      name: nameOf(sheet),
      onHand: false,
      cost,
      ...(sheet.price !== undefined && { price: sheet.price }),
    };
  });
  return [
    ...offcuts.sort((a, b) => areaOf(a) - areaOf(b)),
    ...racked.sort((a, b) => areaOf(a) - areaOf(b)),
    ...bought.sort((a, b) => a.cost / areaOf(a) - b.cost / areaOf(b) || areaOf(a) - areaOf(b)),
  ];
}

type Sized = { readonly length: number; readonly width: number };

const areaOf = ({ length, width }: Sized) => length * width;
const sameSize = (a: Sized, b: Sized) => a.length === b.length && a.width === b.width;
const size = (board: Pick<SheetSize, "length" | "width" | "trim" | "measured"> & KeptClear) => {
  const { length, width, trim, measured } = board;
  const zones = zonesOf(board);
  return { length, width, trim, ...(measured !== undefined && { measured }), ...(zones.length > 0 && { zones }) };
};
const nameOf = ({ length, width }: SheetSize) => `${length} x ${width}`;
