import { areaOfRegion } from "../geometry/measure.js";
import { largestClear } from "./clearRectangle.js";
import type { NestOrder, NestResult, NestResultSheet } from "./engine.js";
import { liesOf } from "./lies.js";

/**
 * What layouts of an order are worth, the first that differs deciding, less being better: the area left over, the cost
 * of stock, sheets bought, board cut into (so that offcuts go before whole sheets of the rack), pieces of it, how evenly
 * the sheets are filled (one full and one nearly empty are better than two halves), and the largest clear rectangle.
 */
export function worthOf(order: NestOrder): (result: NestResult) => readonly number[] {
  const areas = order.items.map((item) => areaOfRegion(item.shape));
  const sizes = order.items.map(
    (item) => new Map(liesOf({ ...item, turns: item.turns }).map((lie) => [lie.turn, lie])),
  );
  const sizeOf = (item: number, turn: number) =>
    sizes[item]!.get(turn) ?? liesOf({ ...order.items[item]!, turns: [turn] })[0]!;
  const laidOn = ({ placed }: NestResultSheet) => sum(placed.map(({ item }) => areas[item]!));
  const clearOf = ({ placed, stock }: NestResultSheet): number => {
    const { length, trim, width } = order.stock[stock]!;
    const taken = placed.map(({ item, x, y, turn }) => {
      const { gap } = order.items[item]!;
      const { w, h } = sizeOf(item, turn);
      return { x0: x - gap, y0: y - gap, x1: x + w + gap, y1: y + h + gap };
    });
    const clear = largestClear({ x0: trim, y0: trim, x1: length - trim, y1: width - trim }, taken);
    return clear === undefined ? 0 : clear.length * clear.width;
  };
  return ({ sheets, left }) => {
    const rows = sheets.map((sheet) => order.stock[sheet.stock]!);
    return [
      sum(left.map((item) => areas[item]!)),
      sum(rows.map((row) => row.cost)),
      rows.filter((row) => row.cost > 0).length,
      sum(rows.map((row) => row.length * row.width)),
      rows.length,
      -sum(sheets.map((sheet) => laidOn(sheet) ** 2)),
      -Math.max(0, ...sheets.map(clearOf)),
    ];
  };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
