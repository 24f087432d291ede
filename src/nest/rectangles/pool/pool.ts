import { sheetOf } from "../asTree.js";
import { copyOf, renamed, takeOut } from "../cutTree.js";
import type { Yard } from "../goal.js";
import type { OpenSheet, Packing } from "../pack.js";
import { kindsOf, turnFor } from "../patterns/kind.js";
import type { Rest } from "../rest.js";
import type { Tile } from "../tile.js";
import { choose } from "./choose.js";
import { dearest, type Found, kindsTree, noFinds } from "./found.js";
import { invent } from "./invent.js";
import { priced } from "./prices.js";

/** Sheets of one row of the stock, found over a search and put together anew. */
export type Pool = {
  /** Remembers how the sheets of a packing are cut up. */
  readonly remember: (packing: Packing) => void;
  /** The other sheets of a packing, and of this row one fewer, with as little left over as can be; undefined where it
   *  has none. */
  readonly withOneFewer: (packing: Packing) => Packing | undefined;
};

/**
 * Method:   1. Sheets that the search comes by are kept, by the kinds of parts in them.
 *           2. Each kind gets the price at which they are worth a sheet; new ones are made that are worth more.
 *           3. Of all of them as many as there should be are chosen, with as little missing as may be.
 * Source:   sheets priced by the relaxed covering: P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of
 *           two and more dimensions", Operations Research 13(1), 1965 (from memory). Here the new ones are made by chance,
 *           so that nothing is proved by the prices.
 */
export function beginPool(yard: Yard, row: number): Pool {
  const { tiles, random, least } = yard;
  const ground = yard.grounds[row]!;
  const groups = kindsOf([...tiles.values()]).map(({ of }) => of);
  const kindOf = new Map(groups.flatMap((of, kind) => of.map(({ item }) => [item, kind] as const)));
  const kinds = groups.map(([first], kind) => ({ ...first!, item: kind }));
  const finds = noFinds();
  const seen = new WeakSet<OpenSheet>();
  const whole = ground.whole.w * ground.whole.h;
  let prices: readonly number[] = kinds.map(({ long, short }) => (long * short) / whole);
  const remember = ({ sheets }: Packing): void => {
    for (const sheet of sheets) {
      if (sheet.stock !== row || seen.has(sheet)) continue;
      seen.add(sheet);
      finds.add(kindsTree(sheet, ground.whole, kindOf));
    }
  };
  const withOneFewer = (packing: Packing): Packing | undefined => {
    const others = packing.sheets.filter((sheet) => sheet.stock !== row);
    const count = packing.sheets.length - others.length;
    if (count === 0) return undefined;
    const laid = new Set(others.flatMap((sheet) => sheet.laid.map(({ item }) => item)));
    const open = groups.map((of) => of.filter(({ item }) => !laid.has(item)));
    const wanted = open.map(({ length }) => length);
    const effort = effortFor(tiles.size, packing.sheets.length);
    prices = priced(finds.all(), wanted, prices, count).each;
    invent(finds, { kinds, wanted, prices, ground, least }, inventionsOf(kinds.length, effort), random);
    finds.thin(mostKept, prices);
    const known = dearest(finds.all(), prices, mostChosenFrom);
    const { chosen } = choose(known, wanted, prices, count - 1, Math.ceil(choices * effort), random);
    const { sheets, left } = cutFor(chosen, open, row, ground.whole);
    return { sheets: [...others, ...sheets], left };
  };
  return { remember, withOneFewer };
}

/** Sheets made at once: fewer where there are many kinds, each of which is looked at for each of them. */
const inventionsOf = (kinds: number, effort: number): number => Math.ceil(Math.min(100, 6000 / kinds) * effort);

/** How much is tried: less where many parts lie on each sheet, each of which is counted every time. */
const effortFor = (parts: number, sheets: number): number => Math.min(1, (6 * sheets) / parts);

/** In how many pieces, in all that are kept, and in those chosen from. */
const mostKept = 40_000;
const mostChosenFrom = 15_000;
const choices = 100;

/** The sheets with tiles in place of kinds, as long as there are any of them; empty ones are left out. */
function cutFor(finds: readonly Found[], open: readonly (readonly Tile[])[], row: number, whole: Rest): Packing {
  const next = open.map(() => 0);
  const sheets = finds.flatMap((found) => {
    const tree = copyOf(found.tree);
    const before = [...next];
    const isEmpty = takeOut(tree, (kind) => next[kind]!++ >= open[kind]!.length);
    if (isEmpty) return [];
    const named = renamed(tree, (blank, kind) => {
      const { item, lies } = open[kind]![before[kind]!++]!;
      return { item, turn: turnFor(lies, blank, whole) };
    });
    return [sheetOf(named, row)];
  });
  return { sheets, left: open.flatMap((of, kind) => of.slice(next[kind]!).map(({ item }) => item)) };
}
