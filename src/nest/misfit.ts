import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { BoardStock, Shop } from "../model/shop.js";
import { nameOf } from "../plan/standing.js";
import type { NestItem } from "./engine.js";
import { excessOf, type Lie, liesOf } from "./lies.js";
import { type StockRow, stockOfBoard } from "./stock.js";

export const partOverSheet: FindingDef = {
  code: "part-over-sheet",
  severity: "error",
  words:
    "{part} is {over} larger than any sheet of board {board} has room for[, the nearest being {nearest}]: its blank " +
    "measures {length} x {width}",
  next: "{way}",
  explain:
    "A part is laid on a sheet as a blank: its outline seen from both sides, with what is trimmed off later. The sheet's " +
    "trim is left free all round. Where a board has grain and the part asks for it, only the turns that keep it count. " +
    "The part is left out of the nest; everything else is laid.",
};

/** Board sheets of one nominal thickness differ by less than this, mm (ANSI A208.2 allows 0.125; as a class, common practice). */
const sameThickness = 0.5;

/** The finding for a part that no sheet takes in any lie it may have, with what would help; none if one does. */
export function misfitOf(
  job: Job,
  shop: Shop,
  part: Part,
  item: NestItem,
  rows: readonly StockRow[],
): readonly Finding[] {
  const lies = liesOf(item);
  const over = leastExcess(lies, rows);
  if (rows.length === 0 || over <= 1e-6) return [];
  const [lie] = lies;
  const nearest = rows.find((row) => excessOf(lies, row) === over);
  const facts = {
    part: text(nameOf(part)),
    board: text(part.board),
    over: mm(over),
    ...(nearest?.offcut !== undefined && { nearest: text(nearest.name) }),
    length: mm(Math.max(lie!.w, lie!.h)),
    width: mm(Math.min(lie!.w, lie!.h)),
    way: text(wayOut(job, shop, part, item, rows)),
  };
  return [raise(partOverSheet, { at: part.from, on: [part.id], facts })];
}

const leastExcess = (lies: readonly Lie[], rows: readonly Pick<StockRow, "length" | "width" | "trim">[]): number =>
  Math.min(...rows.map((row) => excessOf(lies, row)));

function wayOut(job: Job, shop: Shop, part: Part, item: NestItem, rows: readonly StockRow[]): string {
  const anyTurn = liesOf({ ...item, turns: [0, Math.PI / 2] });
  if (leastExcess(anyTurn, rows) <= 0)
    return "turned by a quarter, across the grain, it fits: let its grain run the other way";
  const own = stockOfBoard(job, shop, part.board);
  const others = Object.entries(shop.boards)
    .filter(([, stock]) => stock !== own && own && isLike(stock, own) && leastExcess(liesOf(item), stock.sheets) <= 0)
    .map(([name]) => name);
  if (others.length > 0) return `cut it from ${others.join(" or ")}, which has larger sheets`;
  return "make it smaller, join it of two pieces, or add a larger sheet to the shop file";
}

const isLike = (a: BoardStock, b: BoardStock): boolean =>
  a.material === b.material && Math.abs(a.thickness - b.thickness) < sameThickness;
