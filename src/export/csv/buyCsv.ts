import type { Buy } from "../../lists/buy.js";
import { buysOf } from "../../lists/buys.js";
import { cautionsFor, cautionWords } from "../../lists/cautions.js";
import { priceOf } from "../../lists/price.js";
import type { Build } from "../../model/build.js";
import { type Cell, csvBytes } from "./csv.js";

const heads = ["what", "item", "count", "unit", "price", "cost", "currency", "note", "build"] as const;
type Line = Partial<Record<(typeof heads)[number], Cell>>;

/** The shopping list, its sum, and the cautions that go with it. */
export function buyCsv(build: Build): Uint8Array {
  const buys = buysOf(build);
  const currency = build.shop.currency;
  const cautions = cautionsFor(build, "shopping list").map(
    (caution): Line => ({ what: "caution", note: cautionWords(caution) }),
  );
  const lines = [...buys.map((buy) => buyLine(buy, currency)), totalLine(buys, currency), ...cautions];
  return csvBytes([heads, ...lines.map((line) => heads.map((head) => (head === "build" ? build.hash : line[head])))]);
}

function buyLine({ kind, item, count, unit, price, cost, note }: Buy, currency: string | undefined): Line {
  return { what: kind, item, count, unit, price, cost, currency: cost === undefined ? undefined : currency, note };
}

function totalLine(buys: readonly Buy[], currency: string | undefined): Line {
  const { total, unpriced } = priceOf(buys, currency);
  const cost = unpriced.length < buys.length ? total : undefined;
  const note = unpriced.length > 0 ? `without ${unpriced.length} items that have no price in the shop file` : "";
  return { what: "total", cost, currency: cost === undefined ? undefined : currency, note };
}
