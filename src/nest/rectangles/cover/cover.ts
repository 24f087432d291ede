import { sheetOf } from "../asTree.js";
import { copyOf, renamed, takeOut } from "../cutTree.js";
import type { Yard } from "../goal.js";
import type { OpenSheet, Packing } from "../pack.js";
import { choose } from "./choose.js";
import { invent } from "./invent.js";
import { kindsOf } from "./kinds.js";
import { dearest, emptyPool, type Pattern, patternOf } from "./pool.js";
import { priced } from "./prices.js";

/** Sheets of one row of the stock, found over a search and put together anew. */
export type Cover = {
  /** Remembers how the sheets of a packing are cut up. */
  readonly remember: (packing: Packing) => void;
  /** The other sheets of a packing, and of this row one fewer, with as little left over as can be; undefined where it
   *  has none. */
  readonly withOneFewer: (packing: Packing) => Packing | undefined;
};

/**
 * Method:   1. Sheets that the search comes by are kept as patterns, by the kinds of parts in them.
 *           2. Each kind gets the price at which patterns are worth a sheet; new ones are made that are worth more.
 *           3. Of all of them as many as there should be are chosen, with as little missing as may be.
 * Source:   patterns priced by the relaxed covering: P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of
 *           two and more dimensions", Operations Research 13(1), 1965. Here the new patterns are made by chance, so that
 *           nothing is proved by the prices.
 */
export function beginCover(yard: Yard, row: number): Cover {
  const { tiles, random, least } = yard;
  const ground = yard.grounds[row]!;
  const kinds = kindsOf(tiles.values());
  const kindOf = new Map(kinds.flatMap(({ items }, kind) => items.map((item) => [item, kind] as const)));
  const whole = ground.whole.w * ground.whole.h;
  const pool = emptyPool();
  const seen = new WeakSet<OpenSheet>();
  let prices: readonly number[] = kinds.map(({ tile }) => (tile.long * tile.short) / whole);
  const remember = ({ sheets }: Packing): void => {
    for (const sheet of sheets) {
      if (sheet.stock !== row || seen.has(sheet)) continue;
      seen.add(sheet);
      pool.add(patternOf(sheet, ground.whole, kindOf));
    }
  };
  const withOneFewer = (packing: Packing): Packing | undefined => {
    const others = packing.sheets.filter((sheet) => sheet.stock !== row);
    const count = packing.sheets.length - others.length;
    if (count === 0) return undefined;
    const laid = new Set(others.flatMap((sheet) => sheet.laid.map(({ item }) => item)));
    const open = kinds.map(({ items }) => items.filter((item) => !laid.has(item)));
    const wanted = open.map((items) => items.length);
    prices = priced(pool.all(), wanted, prices, count).each;
    invent(pool, { kinds, wanted, prices, ground, least }, inventionsOf(kinds.length), random);
    pool.thin(mostKept, prices);
    const { chosen } = choose(dearest(pool.all(), prices, mostChosenFrom), wanted, prices, count - 1, choices, random);
    const { sheets, left } = cutFor(chosen, open, row);
    return { sheets: [...others, ...sheets], left };
  };
  return { remember, withOneFewer };
}

/** Patterns made at once: few where there are many kinds, each of which is looked at for each of them. */
const inventionsOf = (kinds: number): number => Math.ceil(Math.min(100, 6000 / kinds));

/** In how many pieces, in all patterns kept, and in those chosen from. */
const mostKept = 40_000;
const mostChosenFrom = 15_000;
const choices = 25;

/** The sheets with items in place of kinds, as long as there are any of them; empty ones are left out. */
function cutFor(patterns: readonly Pattern[], open: readonly (readonly number[])[], row: number): Packing {
  const next = open.map(() => 0);
  const sheets = patterns.flatMap((pattern) => {
    const tree = copyOf(pattern.tree);
    const before = [...next];
    const isEmpty = takeOut(tree, (kind) => next[kind]!++ >= open[kind]!.length);
    if (isEmpty) return [];
    return [
      sheetOf(
        renamed(tree, (kind) => open[kind]![before[kind]!++]!),
        row,
      ),
    ];
  });
  return { sheets, left: open.flatMap((items, kind) => items.slice(next[kind]!)) };
}
