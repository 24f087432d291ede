import type { NestResultSheet } from "../engine.js";
import type { Random } from "../random.js";
import type { Choice } from "./choices.js";
import { fitsRoom, makePile, type Pile, put, putInside } from "./pile.js";
import { roomOf } from "./room.js";
import type { Table } from "./table.js";
import { untangle } from "./untangle.js";

/** How far apart sheets lie while all are searched at once, mm: farther than an obstacle's frame is wide. */
const between = 100;

/** What lies where on a sheet, turned, its extents' corner at x, y. */
export type Laid = { readonly item: number; readonly x: number; readonly y: number; readonly turn: number };

/** Parts that begin where they lie, on a sheet of the choice, and parts that begin anywhere. */
export type Beginning = {
  readonly stays: readonly (Laid & { readonly room: number })[];
  readonly loose: readonly number[];
};

/**
 * Tries to lay parts on the sheets of a choice, all of them at once: they may overlap until the search has sorted them
 * out. Parts may go from sheet to sheet.
 *
 * Yields:   after every part moved, how many places were tried for it.
 * Returns:  the sheets in use, or undefined where `most` places tried were not enough.
 */
export function* layTogether(
  table: Table,
  choice: Choice,
  { stays, loose }: Beginning,
  most: number,
  random: Random,
): Generator<number, readonly NestResultSheet[] | undefined> {
  const items = [...stays.map(({ item }) => item), ...loose];
  const { pile, origins } = pileOf(table, items, choice);
  for (const [i, one] of stays.entries()) {
    const turn = table.order.items[one.item]!.turns.indexOf(one.turn);
    const corner = table.corners[one.item]![turn]!;
    put(pile, i, one.room, turn, origins[one.room]! + one.x - corner.x, one.y - corner.y);
  }
  for (let i = stays.length; i < items.length; i++) if (!scatter(pile, i, random)) return undefined;
  const patience = { effort: { wide: 60, near: 25 }, passes: 60, rounds: 2 };
  const steps = untangle(pile, random, patience, () => pile.tried > most);
  for (let told = 0; ; told = pile.tried) {
    const step = steps.next();
    yield pile.tried - told;
    if (step.done) return step.value === 0 ? sheetsOf(table, pile, items, choice, origins) : undefined;
  }
}

/** The rooms of a choice side by side, what must not be covered among the parts. Where each sheet's corner lies along x. */
export function pileOf(
  { fields, half, obstacles, order, turns }: Table,
  items: readonly number[],
  choice: Choice,
): { readonly pile: Pile; readonly origins: readonly number[] } {
  const rooms = new Float64Array(4 * choice.length);
  const origins: number[] = [];
  let x = 0;
  for (const [k, row] of choice.entries()) {
    const [x0, y0, x1, y1] = roomOf(order.stock[row]!, half);
    rooms.set([x + x0, y0, x + x1, y1], 4 * k);
    origins.push(x);
    x += order.stock[row]!.length + between;
  }
  const fixed = choice.flatMap((row, k) => obstacles[row]!.map((shape) => ({ shape, x: origins[k]! })));
  const all = [...items.map((item) => turns[item]!), ...fixed.map(({ shape }) => [shape])];
  const pile = makePile(all, fields, items.length, rooms);
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

function sheetsOf(
  table: Table,
  pile: Pile,
  items: readonly number[],
  choice: Choice,
  origins: readonly number[],
): readonly NestResultSheet[] {
  const sheets = choice.map((stock, room): NestResultSheet => {
    const placed = items.flatMap((item, i) =>
      pile.room[i] === room ? [laidAt(table, pile, i, item, origins[room]!)] : [],
    );
    return { stock, placed };
  });
  return sheets.filter((sheet) => sheet.placed.length > 0);
}

/** Where a part of the pile lies on its sheet, whose corner lies at `origin` along x. */
export function laidAt({ corners, order }: Table, pile: Pile, i: number, item: number, origin: number): Laid {
  const turn = pile.turn[i]!;
  const corner = corners[item]![turn]!;
  return { item, x: pile.x[i]! + corner.x - origin, y: pile.y[i]! + corner.y, turn: order.items[item]!.turns[turn]! };
}
