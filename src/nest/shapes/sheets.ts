import { boundOf } from "../bound.js";
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
import { type Random, randomFrom } from "../random.js";
import { nestRectangles } from "../rectangles/search.js";
import { worthOf } from "../worth.js";
import { orderAcross, sheetAcross, sheetAlong } from "./across.js";
import { type Choice, cheaperChoices } from "./choices.js";
import { firstFit } from "./firstFit.js";
import { press } from "./press.js";
import { type Table, tableOf } from "./table.js";
import { type Beginning, layTogether } from "./together.js";
import { withoutLikeTurns } from "./turns.js";

/** Lays parts by their true shapes: into the notches and holes of others, on odd offcuts, round zones. */
export const nestShapes: NestEngine = (order) => beginShapes(order).advance(order.iterations).result;

/**
 * The same, begun.
 *
 * 1. A first layout at once: the better of one by extents, on the stock that is plain rectangles, and one by true shapes
 *    (firstFit.ts). It is all that a single iteration gives.
 * 2. Then in turns that grow longer: what was left out is put where the overlap search finds room; a cheaper choice of
 *    sheets is tried; parts of the emptiest sheet are moved onto the others; and what lies there is pressed together,
 *    along the sheet and across it, so that the remainder is one piece.
 *
 * Gaps: every shape is grown by half of the largest gap of the order, so that none is ever less than asked.
 */
export function beginShapes(asked: NestOrder): NestSearch {
  const order = { ...asked, items: asked.items.map(withoutLikeTurns) };
  const table = tableOf(order);
  const worth = worthOf(order);
  const found = (result: NestResult): NestFound => ({ result, worth: worth(result) });
  const first = [byExtents(order), firstFit(table)].map(found);
  const search: Search = {
    table,
    across: undefined,
    found,
    random: randomFrom(order.seed),
    bought: undefined,
    best: isBetter(first[1]!.worth, first[0]!.worth) ? first[1]! : first[0]!,
  };
  const steps = stepsOf(search);
  let begun = false;
  let ended = false;
  let places = 0;
  return {
    advance: (iterations) => {
      places += (begun ? iterations : iterations - 1) * placesPerIteration;
      begun = true;
      while (places > 0 && !ended) {
        const step = steps.next();
        if (step.done) ended = true;
        else places -= step.value;
      }
      return search.best;
    },
    adopt: (other) => take(search, other),
  };
}

/** Places that each further iteration of the order is worth. */
const placesPerIteration = 1_000;
/** Places for one turn of the search, at first and at most. */
const effort = { first: 20_000, most: 2_000_000 } as const;
/** Choices of sheets, and parts of the emptiest sheet, that one turn tries. */
const choicesATurn = 4;
const partsATurn = 6;

type Search = {
  readonly table: Table;
  /** The table of the order turned by a quarter, made when first needed. */
  across: Table | undefined;
  readonly found: (result: NestResult) => NestFound;
  readonly random: Random;
  /** Sheets to buy that no layout can go below, worked out when first needed: the first layout does not wait for it. */
  bought: number | undefined;
  best: NestFound;
};

const isPlain = (row: NestStock): boolean => row.outline === undefined && (row.zones ?? []).length === 0;

/** By extents, on the rectangles of the stock alone. */
function byExtents(order: NestOrder): NestResult {
  const rows = order.stock.flatMap((row, i) => (isPlain(row) ? [i] : []));
  if (rows.length === 0) return { sheets: [], left: order.items.map((_, i) => i) };
  const found = nestRectangles({ ...order, stock: rows.map((i) => order.stock[i]!), iterations: 1 });
  return { ...found, sheets: found.sheets.map((sheet) => ({ ...sheet, stock: rows[sheet.stock]! })) };
}

function take(search: Search, other: NestFound): boolean {
  const better = isBetter(other.worth, search.best.worth);
  if (better) search.best = other;
  return better;
}

/** Yields how many places were tried; ends where a whole turn finds nothing to try. */
function* stepsOf(search: Search): Generator<number, void> {
  for (let places: number = effort.first; ; places = Math.min(2 * places, effort.most)) {
    let tried = 0;
    for (const stage of [layLeft, spareSheets, gather, pressAlong, pressAcross])
      for (const step of stage(search, places)) {
        tried += step;
        yield step;
      }
    if (tried === 0) return;
  }
}

/** Puts what is left, the largest first, on the sheets in use, or on one more that is to be had. */
function* layLeft(search: Search, places: number): Generator<number, void> {
  const { table } = search;
  const order = [...search.best.result.left].sort((a, b) => table.areas[b]! - table.areas[a]! || a - b);
  for (const item of order) {
    const { sheets, left } = search.best.result;
    if (!left.includes(item)) continue;
    const rows = sheets.map((sheet) => sheet.stock);
    for (const choice of [rows, ...unusedRows(table.order, rows).map((row) => [...rows, row])]) {
      const others = left.filter((one) => one !== item);
      if (yield* tried(search, choice, stayingOn(sheets, choice, [item]), places / order.length, others)) break;
    }
  }
}

function unusedRows({ stock }: NestOrder, used: readonly number[]): number[] {
  return stock.flatMap((row, i) =>
    row.count === undefined || row.count > used.filter((one) => one === i).length ? [i] : [],
  );
}

/** Lays all on less stock than now, if it can: the roomiest choice, then some of the others. */
function* spareSheets(search: Search, places: number): Generator<number, void> {
  const { areas, order, usable } = search.table;
  search.bought ??= boundOf(order).count;
  for (let n = 0; n < choicesATurn; n++) {
    const { sheets, left } = search.best.result;
    const items = sheets.flatMap((sheet) => sheet.placed.map(({ item }) => item));
    const area = items.reduce((sum, item) => sum + areas[item]!, 0);
    const choices = cheaperChoices(
      order.stock,
      usable,
      area,
      left.length > 0 ? 0 : search.bought,
      sheets.map((sheet) => sheet.stock),
    );
    const choice = choices[n === 0 ? 0 : Math.floor(choices.length * search.random() ** 2)];
    if (choice === undefined) return;
    const few = Math.min(choicesATurn, choices.length);
    yield* tried(search, choice, stayingOn(sheets, choice, items), places / few, left);
    if (n + 1 >= few) return;
  }
}

/** Moves parts of the emptiest sheet onto the others, one at a time, so that more of it remains. */
function* gather(search: Search, places: number): Generator<number, void> {
  const { areas } = search.table;
  for (let n = 0; n < partsATurn; n++) {
    const { sheets, left } = search.best.result;
    if (sheets.length < 2) return;
    const emptiest = emptiestOf(search.table, sheets);
    const movable = [...emptiest.placed].sort((a, b) => areas[b.item]! - areas[a.item]! || a.item - b.item);
    const one = movable[Math.floor(movable.length * search.random())]!;
    const others = sheets.filter((sheet) => sheet !== emptiest);
    const choice = others.map((sheet) => sheet.stock);
    const rest = { ...emptiest, placed: emptiest.placed.filter((each) => each !== one) };
    const kept = rest.placed.length > 0 ? [rest] : [];
    yield* tried(search, choice, stayingOn(others, choice, [one.item]), places / partsATurn, left, kept);
  }
}

/** Of the sheets in use the one that is filled least. */
function emptiestOf({ areas, usable }: Table, sheets: readonly NestResultSheet[]): NestResultSheet {
  const fill = ({ placed, stock }: NestResultSheet) =>
    placed.reduce((sum, { item }) => sum + areas[item]!, 0) / usable[stock]!;
  return sheets.reduce((least, sheet) => (fill(sheet) < fill(least) ? sheet : least));
}

/** Parts begin where they lie on sheets that the choice has too, the fullest kept first; all others begin anywhere. */
function stayingOn(sheets: readonly NestResultSheet[], choice: Choice, items: readonly number[]): Beginning {
  const fullest = [...sheets].sort((a, b) => b.placed.length - a.placed.length);
  const stays = choice.flatMap((row, room) => {
    const k = fullest.findIndex((sheet) => sheet.stock === row);
    const [same] = k < 0 ? [] : fullest.splice(k, 1);
    return (same?.placed ?? []).map((one) => ({ ...one, room }));
  });
  const lying = new Set(stays.map(({ item }) => item));
  return { stays, loose: items.filter((item) => !lying.has(item)) };
}

/** Lays parts on a choice of sheets; taken if all lie there and that is better. `kept`: sheets that stay as they are. */
function* tried(
  search: Search,
  choice: Choice,
  beginning: Beginning,
  places: number,
  left: readonly number[],
  kept: readonly NestResultSheet[] = [],
): Generator<number, boolean> {
  const { random, table } = search;
  const items = [...beginning.stays.map(({ item }) => item), ...beginning.loose];
  const area = items.reduce((sum, item) => sum + table.areas[item]!, 0);
  if (area > choice.reduce((sum, row) => sum + table.usable[row]!, 0)) return false;
  const sheets = yield* layTogether(table, choice, beginning, places, random);
  return sheets !== undefined && take(search, search.found({ sheets: [...sheets, ...kept], left }));
}

function* pressAlong(search: Search, places: number): Generator<number, void> {
  const { result } = search.best;
  if (result.sheets.length === 0) return;
  const sheet = emptiestOf(search.table, result.sheets);
  const pressed = yield* press(search.table, sheet, places, search.random);
  if (pressed !== undefined) exchange(search, result, sheet, pressed);
}

function* pressAcross(search: Search, places: number): Generator<number, void> {
  const { result } = search.best;
  if (result.sheets.length === 0) return;
  const { order } = search.table;
  search.across ??= tableOf(orderAcross(order), order.stock.every(isPlain) ? search.table : undefined);
  const sheet = emptiestOf(search.table, result.sheets);
  const pressed = yield* press(search.across, sheetAcross(search.table, sheet), places, search.random);
  if (pressed !== undefined) exchange(search, result, sheet, sheetAlong(search.across, order, pressed));
}

function exchange(search: Search, { sheets, left }: NestResult, old: NestResultSheet, pressed: NestResultSheet): void {
  take(search, search.found({ sheets: sheets.map((sheet) => (sheet === old ? pressed : sheet)), left }));
}
