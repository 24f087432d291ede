import { formatNumber } from "../input/number.js";
import type { Buy } from "../lists/buy.js";
import { buysOf } from "../lists/buys.js";
import { priceOf } from "../lists/price.js";
import type { Build } from "../model/build.js";
import { counted } from "./summary.js";

/** What to buy, a line each, and the sum of what has a price. */
export function shoppingList(build: Build) {
  const buys = buysOf(build);
  const price = priceOf(buys, build.shop.currency);
  const money = (value: number) => `${value.toFixed(2)}${price.currency === undefined ? "" : ` ${price.currency}`}`;
  const open = price.unpriced.length;
  const rest = open === 0 ? "" : `, and ${counted(open, "line")} without a price in the shop file`;
  const sum = open === buys.length ? "nothing here has a price in the shop file" : `total ${money(price.total)}${rest}`;
  return { lines: [...buys.map((buy) => lineOf(buy, money)), "", sum], data: { hash: build.hash, buys, price } };
}

function lineOf({ item, count, unit, cost, note }: Buy, money: (value: number) => string): string {
  const amount = `${formatNumber(count, 2)}${unit === undefined ? " " : ` ${unit}`}`.padStart(8);
  const priced = cost === undefined ? "" : `  ${money(cost)}`;
  return `${amount}  ${item}${priced}${note === "" ? "" : `  (${note})`}`;
}
