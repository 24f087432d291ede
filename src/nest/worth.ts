import { areaOfRegion, extentsOf } from "../geometry/measure.js";
import { largestClear } from "./clearRectangle.js";
import type { NestOrder, NestResult, NestResultSheet } from "./engine.js";
import { liesOf } from "./lies.js";
import { stockWorth } from "./stockWorth.js";

/**
 * What layouts of an order are worth, the first that differs deciding, less being better: the area left over, what the
 * sheets are worth (stockWorth.ts), how evenly they are filled (one full and one nearly empty are better than two halves),
 * and the largest rectangle left clear; none is counted on an odd offcut.
 */
export function worthOf(order: Pick<NestOrder, "items" | "stock">): (result: NestResult) => readonly number[] {
  const areas = order.items.map((item) => areaOfRegion(item.shape));
  const sizes = order.items.map((item) => new Map(liesOf(item).map((lie) => [lie.turn, lie])));
  const sizeOf = (item: number, turn: number) =>
    sizes[item]!.get(turn) ?? liesOf({ ...order.items[item]!, turns: [turn] })[0]!;
  const laidOn = ({ placed }: NestResultSheet) => sum(placed.map(({ item }) => areas[item]!));
  const clearOf = ({ placed, stock }: NestResultSheet): number => {
    const { length, outline, trim, width, zones = [] } = order.stock[stock]!;
    if (outline !== undefined) return 0;
    const kept = zones.map((zone) => {
      const { min, max } = extentsOf(zone);
      return { x0: min.x, y0: min.y, x1: max.x, y1: max.y };
    });
    const taken = placed.map(({ item, x, y, turn }) => {
      const { gap } = order.items[item]!;
      const { w, h } = sizeOf(item, turn);
      return { x0: x - gap, y0: y - gap, x1: x + w + gap, y1: y + h + gap };
    });
    const clear = largestClear({ x0: trim, y0: trim, x1: length - trim, y1: width - trim }, [...kept, ...taken]);
    return clear === undefined ? 0 : clear.length * clear.width;
  };
  return ({ sheets, left }) => {
    const rows = sheets.map((sheet) => order.stock[sheet.stock]!);
    return [
      sum(left.map((item) => areas[item]!)),
      ...stockWorth(rows),
      -sum(sheets.map((sheet) => laidOn(sheet) ** 2)),
      -Math.max(0, ...sheets.map(clearOf)),
    ];
  };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
