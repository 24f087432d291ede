import type { NestStock } from "../engine.js";
import { pick, type Random } from "../random.js";
import type { Sawing } from "../saw/sawing.js";
import { type OpenSheet, type Packing, pack, type Rule } from "./pack.js";
import type { Tile } from "./tile.js";

/** A layout that is changed a few sheets at a time. */
export type Layout = { readonly packing: Packing; readonly tiles: ReadonlyMap<number, Tile> };

/**
 * Takes the tiles off a few sheets, and off the floor, and lays them anew on no dearer stock.
 *
 * 1. Two to four sheets; half of the time the emptiest is among them, since it is the one to be got rid of.
 * 2. Their tiles in a new order, by a new rule, on the rows of the stock that the other sheets leave.
 * 3. Kept where fewer tiles are left over, or else the stock is cheaper, or else the sheets are filled less evenly: the
 *    sum of the squared areas laid may hardly fall. Full sheets and empty ones are worth more than half-filled ones.
 *
 * Source: repacking of pooled sheets, as in the local searches for bin packing since A. Lodi, S. Martello and D. Vigo,
 * "Heuristic and metaheuristic approaches for a class of two-dimensional bin packing problems", INFORMS Journal on
 * Computing 11(4), 1999 (from memory); own form.
 *
 * Returns: undefined where the new layout of those sheets is worse.
 */
export function repacked(
  { packing, tiles }: Layout,
  stock: readonly NestStock[],
  kerf: number,
  rule: Rule,
  order: (tiles: readonly Tile[]) => readonly Tile[],
  random: Random,
  sawing?: Sawing,
): Packing | undefined {
  const pool = poolOf(packing.sheets, tiles, random);
  const others = packing.sheets.filter((sheet) => !pool.includes(sheet));
  const loose = [...pool.flatMap((sheet) => sheet.laid.map(({ item }) => item)), ...packing.left];
  const rows = stock.map((row, i) => ({
    ...row,
    ...(row.count !== undefined && { count: row.count - others.filter((sheet) => sheet.stock === i).length }),
  }));
  const fresh = pack(order(loose.map((item) => tiles.get(item)!)), rows, kerf, rule, random, sawing);
  if (!isNoWorse(fresh, { sheets: pool, left: packing.left }, stock, tiles, random)) return undefined;
  return { sheets: [...others, ...fresh.sheets], left: fresh.left };
}

function poolOf(sheets: readonly OpenSheet[], tiles: ReadonlyMap<number, Tile>, random: Random): OpenSheet[] {
  const left = [...sheets];
  const pool: OpenSheet[] = [];
  const take = (sheet: OpenSheet) => pool.push(...left.splice(left.indexOf(sheet), 1));
  if (random() < 0.5)
    take(left.reduce((least, sheet) => (laidOn(sheet, tiles) < laidOn(least, tiles) ? sheet : least)));
  for (const wanted = 2 + Math.floor(random() * 3); pool.length < wanted; ) {
    const [first, ...more] = left;
    if (first === undefined) break;
    take(pick(random, [first, ...more]));
  }
  return pool;
}

function isNoWorse(
  fresh: Packing,
  old: Packing,
  stock: readonly NestStock[],
  tiles: ReadonlyMap<number, Tile>,
  random: Random,
): boolean {
  const lost = ({ left }: Packing) => left.reduce((sum, item) => sum + areaOf(tiles.get(item)!), 0);
  const cost = ({ sheets }: Packing) => sheets.reduce((sum, { stock: row }) => sum + stock[row]!.cost, 0);
  const board = ({ sheets }: Packing) =>
    sheets.reduce((sum, { stock: row }) => sum + stock[row]!.length * stock[row]!.width, 0);
  const unevenness = ({ sheets }: Packing) => sheets.reduce((sum, sheet) => sum + laidOn(sheet, tiles) ** 2, 0);
  for (const measure of [lost, cost, board]) {
    const [a, b] = [measure(fresh), measure(old)];
    if (Math.abs(a - b) > 1e-9 * Math.abs(b)) return a < b;
  }
  return unevenness(fresh) >= unevenness(old) * (1 - slack * random());
}

/** Layouts less uneven by up to this share are taken too, or the search would stick. */
const slack = 0.01;

/** The area of the tiles on a sheet. */
export const laidOn = (sheet: OpenSheet, tiles: ReadonlyMap<number, Tile>): number =>
  sheet.laid.reduce((sum, { item }) => sum + areaOf(tiles.get(item)!), 0);

const areaOf = (tile: Tile): number => tile.long * tile.short;
