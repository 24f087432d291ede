import { isBetter, type NestStock } from "../engine.js";

/** Sheets to lay all parts on: rows of the stock, one entry a sheet. */
export type Choice = readonly number[];

/** Choices that are looked at; far more than a workshop's stock gives. */
const most = 3_000;

/**
 * Every choice of sheets that is worth less than what is in use now and whose usable area would hold the parts, the
 * roomiest first, since it is the likeliest to do.
 *
 * `usable`: mm2 of each row within its trim. `bought`: a count of sheets to buy that no layout can go below.
 */
export function cheaperChoices(
  stock: readonly NestStock[],
  usable: readonly number[],
  area: number,
  bought: number,
  now: Choice,
): readonly Choice[] {
  const limit = worthOfStock(stock, now);
  const found: Choice[] = [];
  const grow = (choice: number[], row: number, room: number): void => {
    if (found.length >= most || !isBetter(worthOfStock(stock, choice), limit)) return;
    const toBuy = choice.filter((one) => stock[one]!.cost > 0).length;
    if (room >= area && toBuy >= bought) found.push([...choice]);
    for (let next = row; next < stock.length; next++) {
      if (choice.filter((one) => one === next).length >= (stock[next]!.count ?? most)) continue;
      grow([...choice, next], next, room + usable[next]!);
    }
  };
  grow([], 0, 0);
  const roomOf = (choice: Choice) => choice.reduce((sum, row) => sum + usable[row]!, 0);
  return found.sort((a, b) => roomOf(b) - roomOf(a));
}

/** As in `worthOf`: cost, sheets bought, board cut into, pieces of it. */
function worthOfStock(stock: readonly NestStock[], choice: Choice): readonly number[] {
  const rows = choice.map((row) => stock[row]!);
  return [
    rows.reduce((sum, row) => sum + row.cost, 0),
    rows.filter((row) => row.cost > 0).length,
    rows.reduce((sum, row) => sum + row.length * row.width, 0),
    rows.length,
  ];
}
