import type { NestEngine, NestOrder, NestResult, NestResultSheet, NestStock } from "../engine.js";
import { type Random, randomFrom } from "../random.js";
import { nestRectangles } from "../rectangles/search.js";
import { fitsRoom, makePile, type Pile, put, putInside } from "./pile.js";
import { type Table, tableOf, usableOf } from "./table.js";
import { withoutLikeTurns } from "./turns.js";
import { untangle } from "./untangle.js";

/**
 * Lays parts by their true shapes: into the notches and holes of others, on odd offcuts, round zones.
 *
 * 1. A first layout by extents (`nestRectangles`), on the stock that is plain rectangles: it is there at once, and all
 *    that a single iteration gives.
 * 2. What it left, put on the sheets in use or on one more of the rack, wherever the overlap search finds room.
 * 3. Again and again a cheaper choice of sheets: the least filled one emptied onto the others, or exchanged for a
 *    cheaper or smaller one. All parts lie on all those sheets at once and may overlap until the search has sorted them
 *    out; where it cannot within its share of the budget, the layout stays as it was.
 *
 * Gaps: every shape is grown by half of the largest gap of the order, so that none is ever less than asked.
 */
export const nestShapes: NestEngine = (asked) => {
  const order = { ...asked, items: asked.items.map(withoutLikeTurns) };
  const first = firstLayout(order);
  if (order.iterations <= 1) return first;
  const table = tableOf(order);
  const search: Search = {
    ...table,
    random: randomFrom(order.seed),
    budget: (order.iterations - 1) * placesPerIteration,
  };
  let best = first;
  if (best.left.length > 0) best = withLeft(search, best);
  for (let next: NestResult | undefined = best; next !== undefined; ) {
    best = next;
    next = cheaper(search, best);
  }
  return best;
};

/** Places that each further iteration of the order is worth. */
const placesPerIteration = 5_000;
/** Share of what is left of the budget that one choice of sheets may use up. */
const oneChoice = 0.25;
/** How far apart sheets lie while all are searched at once, mm: farther than an obstacle's frame is wide. */
const between = 100;

type Search = Table & {
  readonly random: Random;
  /** Places that may still be tried. */
  budget: number;
};

const isPlain = (row: NestStock): boolean => row.outline === undefined && (row.zones ?? []).length === 0;

/** By extents, on the rectangles of the stock alone. */
function firstLayout(order: NestOrder): NestResult {
  const rows = order.stock.flatMap((row, i) => (isPlain(row) ? [i] : []));
  if (rows.length === 0) return { sheets: [], left: order.items.map((_, i) => i) };
  const found = nestRectangles({ ...order, stock: rows.map((i) => order.stock[i]!) });
  return { ...found, sheets: found.sheets.map((sheet) => ({ ...sheet, stock: rows[sheet.stock]! })) };
}

/** Puts what is left, the largest first, on the sheets in use, or on one more that is to be had. */
function withLeft(search: Search, start: NestResult): NestResult {
  let best = start;
  const order = [...start.left].sort((a, b) => search.areas[b]! - search.areas[a]! || a - b);
  for (const [n, item] of order.entries()) {
    const rows = best.sheets.map((sheet) => sheet.stock);
    const choices = [rows, ...unusedRows(search, rows).map((row) => [...rows, row])];
    for (const choice of choices) {
      const found = laidOn(
        search,
        best,
        choice,
        rows.map((_, k) => k),
        [item],
        oneChoice / (order.length - n),
      );
      if (found === undefined) continue;
      best = { sheets: found.sheets, left: best.left.filter((one) => one !== item) };
      break;
    }
  }
  return best;
}

/** The first cheaper choice of sheets that takes all that is laid now. */
function cheaper(search: Search, now: NestResult): NestResult | undefined {
  const rows = now.sheets.map((sheet) => sheet.stock);
  const laid = now.sheets.map((sheet) => sheet.placed.reduce((sum, { item }) => sum + search.areas[item]!, 0));
  const fill = (k: number) => laid[k]! / search.usable[rows[k]!]!;
  const weakest = rows.map((_, k) => k).sort((a, b) => fill(a) - fill(b) || a - b);
  for (const k of weakest) {
    const others = rows.filter((_, i) => i !== k);
    const from = rows.map((_, i) => i).filter((i) => i !== k);
    const loose = now.sheets[k]!.placed.map(({ item }) => item);
    const instead = unusedRows(search, rows).filter((row) => isCheaper(search.order, row, rows[k]!));
    for (const choice of [others, ...instead.map((row) => [...others, row])]) {
      const found = laidOn(search, now, choice, from, loose, oneChoice);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

function unusedRows({ order }: Search, used: readonly number[]): number[] {
  return order.stock.flatMap((row, i) =>
    row.count === undefined || row.count > used.filter((one) => one === i).length ? [i] : [],
  );
}

function isCheaper({ stock }: NestOrder, a: number, b: number): boolean {
  const [one, other] = [stock[a]!, stock[b]!];
  return one.cost < other.cost || (one.cost === other.cost && usableOf(one) < usableOf(other));
}

/**
 * Tries to lay all that `now` has laid, and `loose` besides, on the rows of a choice. The first rooms of the choice are
 * the sheets `from` of `now`, and what lies there begins where it is.
 */
function laidOn(
  search: Search,
  now: NestResult,
  choice: readonly number[],
  from: readonly number[],
  loose: readonly number[],
  share: number,
): NestResult | undefined {
  const { areas, random, usable } = search;
  const stays = from.flatMap((k, room) => now.sheets[k]!.placed.map((one) => ({ ...one, room })));
  const items = [...stays.map(({ item }) => item), ...loose];
  const area = items.reduce((sum, item) => sum + areas[item]!, 0);
  if (choice.length === 0 || area > choice.reduce((sum, row) => sum + usable[row]!, 0)) return undefined;
  if (search.budget <= 0) return undefined;
  const { pile, origins } = pileOf(search, items, choice);
  stays.forEach((one, i) => {
    const turn = search.order.items[one.item]!.turns.indexOf(one.turn);
    const corner = search.corners[one.item]![turn]!;
    put(pile, i, one.room, turn, origins[one.room]! + one.x - corner.x, one.y - corner.y);
  });
  for (let i = stays.length; i < items.length; i++) if (!scatter(pile, i, random)) return undefined;
  const end = search.budget * share;
  const steps = untangle(
    pile,
    random,
    { effort: { wide: 60, near: 25 }, passes: 60, rounds: 2 },
    () => pile.tried > end,
  );
  let step = steps.next();
  while (!step.done) step = steps.next();
  search.budget -= pile.tried;
  return step.value === 0 ? resultOf(search, pile, items, choice, origins) : undefined;
}

function pileOf(
  search: Search,
  items: readonly number[],
  choice: readonly number[],
): { pile: Pile; origins: number[] } {
  const { half, obstacles, order, turns } = search;
  const rooms = new Float64Array(4 * choice.length);
  const origins: number[] = [];
  let x = 0;
  for (const [k, row] of choice.entries()) {
    const { length, width, trim } = order.stock[row]!;
    rooms.set([x + trim - half, trim - half, x + length - trim + half, width - trim + half], 4 * k);
    origins.push(x);
    x += length + between;
  }
  const fixed = choice.flatMap((row, k) => obstacles[row]!.map((shape) => ({ shape, x: origins[k]! })));
  const all = [...items.map((item) => turns[item]!), ...fixed.map(({ shape }) => [shape])];
  const pile = makePile(all, search.fields, items.length, rooms);
  for (const [i, one] of fixed.entries()) put(pile, items.length + i, 0, 0, one.x, 0);
  return { pile, origins };
}

/** Anywhere in any room that takes it, in any turn; false where none does. */
function scatter(pile: Pile, i: number, random: Random): boolean {
  const { rooms } = pile;
  const ways = pile.turns[i]!.flatMap((shape, turn) =>
    [...Array(rooms.length / 4).keys()].flatMap((room) => (fitsRoom(rooms, room, shape) ? [{ room, turn }] : [])),
  );
  const way = ways[Math.floor(random() * ways.length)];
  if (way === undefined) return false;
  const [x0, y0, x1, y1] = rooms.subarray(4 * way.room, 4 * way.room + 4);
  putInside(pile, i, way.room, way.turn, x0! + random() * (x1! - x0!), y0! + random() * (y1! - y0!));
  return true;
}

function resultOf(
  search: Search,
  pile: Pile,
  items: readonly number[],
  choice: readonly number[],
  origins: readonly number[],
): NestResult {
  const sheets = choice.map((stock, room): NestResultSheet => {
    const placed = items.flatMap((item, i) => {
      if (pile.room[i] !== room) return [];
      const turn = pile.turn[i]!;
      const corner = search.corners[item]![turn]!;
      const x = pile.x[i]! + corner.x - origins[room]!;
      return [{ item, x, y: pile.y[i]! + corner.y, turn: search.order.items[item]!.turns[turn]! }];
    });
    return { stock, placed };
  });
  return { sheets: sheets.filter((sheet) => sheet.placed.length > 0), left: [] };
}
