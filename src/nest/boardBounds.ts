import { extentsOf } from "../geometry/measure.js";
import { rectangle } from "../geometry/shapes.js";
import type { Layout } from "../model/build.js";
import { type Bound, boundOf } from "./bound.js";
import type { NestItem } from "./engine.js";
import { type GroupNest, laidItems } from "./groupNest.js";
import type { StockRow } from "./stock.js";

/**
 * A count of sheets to buy for each board that no layout can go below. `stockOf`: all that a board may be cut from, where
 * nothing of it has been taken yet.
 */
export function boundsByBoard(
  nests: readonly GroupNest[],
  stockOf: (board: GroupNest["group"]["board"]) => readonly StockRow[],
): Layout["bounds"] {
  const boards = [...new Set(nests.map(({ group }) => group.board))];
  return boards.map((board) => {
    const [first, second] = nests.filter(({ group }) => group.board === board);
    if (second === undefined) return { board, ...boundOf({ ...first!.order, items: laidItems(first!) }) };
    return { board, ...boundOfBoth(laidItems(first!), laidItems(second), stockOf(board)) };
  });
}

/**
 * Of a board that is cut both ways, the machine's parts on what the saw leaves too: the largest of what the sawn parts
 * need by themselves, the machine's by themselves, and all of them laid freely. Sawn parts are solid to the machine in
 * all of the rectangle that they are sawn from.
 */
export function boundOfBoth(
  sawn: readonly NestItem[],
  machined: readonly NestItem[],
  stock: readonly StockRow[],
): Bound {
  const all = [...sawn.map(asRectangle), ...machined];
  const bounds = [
    boundOf({ items: sawn, stock, edgeToEdge: true }),
    boundOf({ items: machined, stock, edgeToEdge: false }),
    boundOf({ items: all, stock, edgeToEdge: false }),
  ];
  return bounds.reduce((best, bound) => (bound.count > best.count ? bound : best));
}

function asRectangle(item: NestItem): NestItem {
  if (item.turns.some((turn) => Math.abs(Math.sin(2 * turn)) > 1e-9)) return item;
  const { min, max } = extentsOf(item.shape);
  return { ...item, shape: { outer: rectangle(min.x, min.y, max.x, max.y, "sawn"), holes: [] } };
}
