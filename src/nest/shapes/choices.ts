import { isBetter, type NestStock } from "../engine.js";
import { stockWorth } from "../stockWorth.js";

/** Sheets to lay all parts on: rows of the stock, one entry a sheet. */
export type Choice = readonly number[];

/** Choices that are looked at: far more than most racks give, and still only milliseconds. */
const most = 5_000;

/**
 * Choices of sheets that are worth less than what is in use now and whose usable area would hold the parts, the roomiest
 * first, since it is the likeliest to do: what is in use with a sheet less, or one exchanged, and all choices of few
 * sheets, as many as can be looked at.
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
  const limit = stockWorth(now.map((row) => stock[row]!));
  const isLess = (choice: Choice) => isBetter(stockWorth(choice.map((row) => stock[row]!)), limit);
  const roomOf = (choice: Choice) => choice.reduce((sum, row) => sum + usable[row]!, 0);
  const toBuy = (choice: Choice) => choice.filter((row) => stock[row]!.cost > 0).length;
  const near = nearTo(stock, now).filter(isLess);
  const all = new Map([...near, ...fewSheets(stock, isLess)].map((choice) => [choice.join(" "), choice]));
  const enough = [...all.values()].filter((choice) => roomOf(choice) >= area && toBuy(choice) >= bought);
  return enough.sort((a, b) => roomOf(b) - roomOf(a));
}

const isThere = (stock: readonly NestStock[], choice: Choice, row: number): boolean =>
  choice.filter((one) => one === row).length < (stock[row]!.count ?? Number.POSITIVE_INFINITY);

/** What is in use with one sheet of a kind less, and each of these with one more of any kind. */
function nearTo(stock: readonly NestStock[], now: Choice): readonly Choice[] {
  const fewer = [...new Set(now)].map((row) => now.filter((_, i) => i !== now.indexOf(row)));
  const others = fewer.flatMap((choice) =>
    stock.flatMap((_, row) => (isThere(stock, choice, row) ? [[...choice, row]] : [])),
  );
  return [...fewer, ...others].map((choice) => [...choice].sort((a, b) => a - b));
}

/** Choices of one sheet, of two, and so on; those that are not less are not added to. */
function fewSheets(stock: readonly NestStock[], isLess: (choice: Choice) => boolean): readonly Choice[] {
  const found: Choice[] = [];
  let level: readonly Choice[] = [[]];
  let looked = 0;
  while (level.length > 0 && looked < most) {
    const next: Choice[] = [];
    for (const choice of level)
      for (let row = choice.at(-1) ?? 0; row < stock.length && looked < most; row++) {
        if (!isThere(stock, choice, row)) continue;
        looked++;
        const more = [...choice, row];
        if (isLess(more)) next.push(more);
      }
    found.push(...next);
    level = next;
  }
  return found;
}
