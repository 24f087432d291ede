import {
  isBetter,
  type NestEngine,
  type NestFound,
  type NestOrder,
  type NestResult,
  type NestResultSheet,
  type NestSearch,
  type NestStock,
} from "../engine.js";
import { pick, type Random, randomFrom } from "../random.js";
import { placedOn, sawnSheet, sawnWorth, smallCuts } from "../saw/sawnSheets.js";
import { stockWorth } from "../stockWorth.js";
import { type Goal, goalOf, goalWithout, hasRoom, packingOf, towards, type Yard } from "./goal.js";
import { groundOf } from "./ground.js";
import { largestFirst, sizes } from "./order.js";
import { type OpenSheet, type Packing, pack, type Rule } from "./pack.js";
import { layingByPatterns } from "./patterns/layouts.js";
import { beginPool, type Pool } from "./pool/pool.js";
import { laidOn, repacked } from "./repack.js";
import { kerfOf, type Tile, tilesOf } from "./tile.js";

/**
 * Lays blanks by their extents, every cut from edge to edge, so that the result serves a saw as well as a router.
 *
 * Method:   layouts made greedily, one tile after another in the best rest, each in another order and by another rule.
 *           Half of them begin from the best order so far with a few tiles exchanged; where more than one sheet is in use,
 *           layouts repacked a few sheets at a time come between (repack.ts), and tries to do with a sheet less, begun from
 *           the best sheets of all layouts (pool/) or by the patterns of few sizes (patterns/), tiles taken out and put
 *           back piece by piece (goal.ts).
 *           The best of all is kept.
 * Best:     least left over, then least cost of stock, fewest sheets bought, least board cut into (so that offcuts go
 *           before whole sheets of the rack), fewest pieces of it, and the largest rectangle left in one piece.
 * Source:   greedy guillotine packing with one full cut a tile: common practice, no source.
 */
export const nestRectangles: NestEngine = (order) => beginRectangles(order).advance(order.iterations).result;

/** The same, begun. What another search found is kept, but not gone on from: its rests are not known. */
export function beginRectangles(order: NestOrder): NestSearch {
  const all = tilesOf(order);
  const tiles = new Map(all.map((tile) => [tile.item, tile]));
  const kerf = kerfOf(order);
  const random = randomFrom(order.seed);
  const search: Search = { order, kerf, all, tiles, random };
  const { stock, sawing } = order;
  // what wants room of its own beside the kerf, or lies in openings, is not put back piece by piece
  const isPlain = all.every(({ pad, lies }) => pad === 0 && lies.every(({ openings }) => openings.length === 0));
  const least = all.reduce((shortest, tile) => Math.min(shortest, tile.short), Number.POSITIVE_INFINITY);
  const yard: Yard = { tiles, stock, kerf, grounds: stock.map((row) => groundOf(row, kerf, sawing)), least, random };
  const goals: { pooled?: Pursuit; lasting?: Pursuit } = {};
  let byPatterns: ReturnType<typeof layingByPatterns>;
  const row = rowFor(stock);
  const pool = isPlain && row !== undefined ? beginPool(yard, row) : undefined;
  let best: Attempt | undefined;
  let given: NestFound | undefined;
  let current: Packing;
  let done = 0;
  const take = (attempt: Attempt): void => {
    pool?.remember(attempt.packing);
    if (best !== undefined && !isBetter(attempt.worth, best.worth)) return;
    best = attempt;
    current = attempt.packing;
  };
  const iterate = (n: number): void => {
    if (best === undefined || isGreedy(n) || best.packing.sheets.length + best.packing.left.length <= 1) {
      take(attemptOf(search, n, best));
      return;
    }
    if (isPlain && n % patternsEvery === patternsAfter) {
      if (n === patternsAfter) byPatterns = layingByPatterns(all, yard, sawing, (begun) => completed(search, begun));
      for (const packing of byPatterns?.() ?? []) takeHeld(best, packing);
      if (byPatterns) return;
    }
    if (n % repackings !== 1 && aim(best, n)) return;
    const next = repackedOnce(search, current);
    if (next === undefined) return;
    take({ ...best, packing: next, worth: worthOf(order, all, next, best.worth) });
    current = next;
  };
  const takeHeld = (from: Attempt, packing: Packing): void => {
    const worth = worthOf(order, all, packing, best?.worth);
    if (best !== undefined && !isBetter(worth, best.worth)) return;
    if (isHeldAsWell(order, packing, from.packing)) take({ ...from, packing, worth });
  };
  /** Some tries to do with a sheet less than the best layout; false where that cannot be. */
  const aim = (from: Attempt, n: number): boolean => {
    if (!isPlain) return false;
    // of a single sheet there is nothing to choose
    const pooled = pool !== undefined && from.packing.sheets.length > 2 && n % coverings < coverings / 2;
    const key = pooled ? "pooled" : "lasting";
    let goal = goals[key];
    const stockWorth = from.worth.slice(0, stockPlaces);
    const isAnew = pooled ? n % coverings === 0 : goal !== undefined && goal.now.tries >= longestGoal;
    if (goal === undefined || isAnew || isBetter(stockWorth, goal.from)) {
      const now = nextGoal(yard, from.packing, pooled ? pool : undefined);
      const record = goal !== undefined && !isBetter(stockWorth, goal.from) ? goal.record : Number.POSITIVE_INFINITY;
      goal = { from: stockWorth, now, least: now.area, record };
    }
    if (goal.now.sheets.length === 0 || !hasRoom(goal.now.sheets, yard)) return false;
    const { least, record } = goal;
    for (let tries = 0; tries < triesAtOnce && goal.now.area >= least; tries++)
      goal = { ...goal, now: towards(goal.now, yard) };
    const { area } = goal.now;
    goals[key] = { ...goal, least: Math.min(area, least), record: Math.min(area, record) };
    if (area >= least) return true;
    // what is left still needs another sheet, but less of it
    const packing = completed(search, goal.now);
    // how sheets are sawn takes longest to work out: only where less is left over than on the way to any goal before
    if (!sawing || area < record) takeHeld(from, packing);
    pool?.remember(packing);
    return true;
  };
  return {
    advance: (iterations) => {
      for (const end = done + Math.max(1, iterations); done < end; done++) iterate(done);
      if (given !== undefined && isBetter(given.worth, best!.worth)) return given;
      return { result: resultOf(order, best!.packing), worth: best!.worth };
    },
    adopt: (found) => {
      given = found;
    },
  };
}

/** Layouts made from nothing, among those repacked: at first every second, later few. */
const isGreedy = (n: number): boolean => n < starters.length || (n < mostGreedy && n % 2 === 0) || n % 64 === 0;

const mostGreedy = 100;

/** Of so many layouts that are not made from nothing one is repacked; the others aim at a sheet less. */
const repackings = 8;

/** Of so many layouts half aim at a sheet less from sheets chosen anew from all that were found, half go on as before. */
const coverings = 8;

/** Layouts by patterns are tried after so many layouts, and then after so many more each time; none made from nothing. */
const patternsAfter = 33;
const patternsEvery = 256;

/** Tries towards a goal between two layouts that are repacked. */
const triesAtOnce = 100;

/** Tries towards a goal before another is chosen. */
const longestGoal = 20_000;

/** Tiles taken out and put back can leave pieces in between smaller than they were when a tile was put there. */
function isHeldAsWell({ stock, sawing }: NestOrder, packing: Packing, other: Packing): boolean {
  if (!sawing) return true;
  const small = ({ sheets }: Packing) =>
    sheets.reduce((sum, sheet) => sum + smallCuts(sheet, stock[sheet.stock]!, sawing), 0);
  const count = small(packing);
  return count === 0 || count <= small(other);
}

/** A goal that is not quite reached as a layout: what is left lies on what other sheets there are. */
function completed({ order, kerf, tiles, random }: Search, goal: Pick<Goal, "sheets" | "left">): Packing {
  const { sheets: used, left } = packingOf(goal);
  if (left.length === 0) return { sheets: used, left };
  const rows = order.stock.map((row, i) => ({
    ...row,
    ...(row.count !== undefined && { count: row.count - used.filter((sheet) => sheet.stock === i).length }),
  }));
  const loose = sorted(
    left.map((item) => tiles.get(item)!),
    random,
    0,
  );
  const more = pack(loose, rows, kerf, starters[0], random, order.sawing);
  return { sheets: [...used, ...more.sheets], left: more.left };
}

/** To find room for what is left over; where nothing is, to do without one of the sheets, mostly the least filled. */
function nextGoal(yard: Yard, packing: Packing, pool: Pool | undefined): Goal {
  const { tiles, random } = yard;
  const fewer = packing.left.length === 0 ? pool?.withOneFewer(packing) : undefined;
  if (fewer) return goalOf(fewer, yard);
  const byFill = [...packing.sheets].sort((a, b) => laidOn(a, tiles) - laidOn(b, tiles));
  const some = byFill[Math.floor(random() ** 3 * byFill.length)];
  return packing.left.length > 0 || some === undefined ? goalOf(packing, yard) : goalWithout(some, packing, yard);
}

/** A goal on the way to which tries are made: for what stock, and the least left over since it was chosen and ever. */
type Pursuit = {
  readonly from: readonly number[];
  readonly now: Goal;
  readonly least: number;
  readonly record: number;
};

/** The stock of which there is as much as is needed. */
function rowFor(stock: readonly NestStock[]): number | undefined {
  const row = stock.findIndex(({ count }) => count === undefined);
  return row < 0 ? undefined : row;
}

type Search = {
  readonly order: NestOrder;
  readonly kerf: number;
  readonly all: readonly Tile[];
  readonly tiles: ReadonlyMap<number, Tile>;
  readonly random: Random;
};

type Attempt = {
  readonly tiles: readonly Tile[];
  readonly rule: Rule;
  readonly packing: Packing;
  /** Compared place by place: the first that differs decides, and less is better. */
  readonly worth: readonly number[];
};

function attemptOf({ order, kerf, all, random }: Search, n: number, best: Attempt | undefined): Attempt {
  const again = best && n >= starters.length && random() < 0.5;
  const rule = again ? best.rule : (starters[n] ?? anyRule(random));
  const tiles = again ? exchanged(best.tiles, random) : sorted(all, random, n < starters.length ? 0 : 0.25);
  const packing = pack(tiles, order.stock, kerf, rule, random, order.sawing);
  return { tiles, rule, packing, worth: worthOf(order, tiles, packing, best?.worth) };
}

function repackedOnce({ order, kerf, tiles, random }: Search, packing: Packing): Packing | undefined {
  const anew = (loose: readonly Tile[]) => sorted(loose, random, 0.25);
  return repacked({ packing, tiles }, order.stock, kerf, anyRule(random), anew, random, order.sawing);
}

/** Tried first, without chance, so that even a single iteration gives a decent layout. */
const starters: readonly [Rule, ...Rule[]] = [
  { fit: "beside", split: "larger", rack: "in turn", open: "first" },
  { fit: "area", split: "larger", rack: "open", open: "first" },
  { fit: "low", split: "along", rack: "in turn", open: "first" },
  { fit: "low", split: "across", rack: "in turn", open: "first" },
];

const anyRule = (random: Random): Rule => ({
  fit: pick(random, ["beside", "area", "flush", "low"]),
  split: pick(random, ["along", "across", "larger", "late", "late", "late"]),
  rack: pick(random, ["open", "in turn"]),
  open: pick(random, ["first", "any"]),
});

/** Largest first by one of several measures, blurred by up to this share. */
function sorted(tiles: readonly Tile[], random: Random, blur: number): Tile[] {
  const size = blur === 0 ? sizes[0] : pick(random, sizes);
  return largestFirst(tiles, size, blur, random);
}

/** The same tiles with one to three pairs exchanged. */
function exchanged(tiles: readonly Tile[], random: Random): Tile[] {
  const next = [...tiles];
  for (let n = 1 + Math.floor(random() * 3); n > 0; n--) {
    const i = Math.floor(random() * next.length);
    const j = Math.floor(random() * next.length);
    [next[i], next[j]] = [next[j]!, next[i]!];
  }
  return next;
}

function worthOf(order: NestOrder, tiles: readonly Tile[], packing: Packing, best?: readonly number[]): number[] {
  const stock = takenWorth(order, tiles, packing);
  // how sheets are sawn takes longest to work out, and decides only between layouts of one stock
  if (best && isBetter(best.slice(0, stock.length), stock)) return [...stock, 0, 0];
  return [...stock, ...sheetsWorth(order, tiles, packing)];
}

/** The first places of a layout's worth, which are those of the stock it takes. */
const stockPlaces = 5;

/**
 * Between layouts of the same stock: at saws the settings and the largest piece that stays whole; else how evenly sheets
 * are filled (one full and one nearly empty are better than two halves) and the largest rectangle left in one piece.
 */
function sheetsWorth(
  { stock, sawing, items }: NestOrder,
  tiles: readonly Tile[],
  { sheets }: Packing,
): readonly [number, number] {
  if (sawing) {
    const sawn = sheets.map((sheet) => sawnSheet(sheet, stock[sheet.stock]!, sawing));
    return [sawnWorth(sawn, sawing, items), 0];
  }
  const areas = new Map(tiles.map(({ item, long, short }) => [item, long * short]));
  const laid = sheets.map((sheet) => sheet.laid.reduce((sum, { item }) => sum + areas.get(item)!, 0));
  const rests = sheets.flatMap((sheet) => sheet.rests.map((rest) => rest.w * rest.h));
  return [-laid.reduce((sum, area) => sum + area ** 2, 0), -rests.reduce((most, area) => Math.max(most, area), 0)];
}

/** The area that found no place, and what the sheets are worth. */
function takenWorth(order: NestOrder, tiles: readonly Tile[], packing: Packing): readonly number[] {
  const left = new Set(packing.left);
  const unlaid = tiles.reduce((sum, tile) => sum + (left.has(tile.item) ? tile.long * tile.short : 0), 0);
  return [unlaid, ...stockWorth(packing.sheets.map((sheet) => order.stock[sheet.stock]!))];
}

function resultOf(order: NestOrder, packing: Packing): NestResult {
  return {
    sheets: packing.sheets.map((sheet) => resultSheet(order, sheet)),
    left: packing.left,
  };
}

function resultSheet({ items, stock, sawing }: NestOrder, sheet: OpenSheet): NestResultSheet {
  const row = stock[sheet.stock]!;
  if (sawing) {
    const sawn = sawnSheet(sheet, row, sawing);
    return { stock: sheet.stock, placed: placedOn(sawn, sheet, items), sawn };
  }
  const placed = sheet.laid.map(({ item, x, y, turn }) => ({ item, x: x + row.trim, y: y + row.trim, turn }));
  return { stock: sheet.stock, placed };
}
