import type { NestResultSheet } from "../engine.js";
import type { Random } from "../random.js";
import { collide } from "./collide.js";
import { type Pile, put, restore } from "./pile.js";
import { type IsClear, settled } from "./settle.js";
import type { Shape } from "./shape.js";
import { advance, beginFrom } from "./strip.js";
import type { Table } from "./table.js";
import { laidAt, pileOf } from "./together.js";

/** The search for a shorter strip is told this often how far its budget is spent. */
const parts = 20;

/**
 * Presses the parts of a sheet together towards its left end, so that what remains is one piece.
 *
 * Yields:   after each share of `most` places, how many were tried for it.
 * Returns:  the sheet with its parts pressed, or undefined where they take as much of its length as before.
 */
export function* press(
  table: Table,
  sheet: NestResultSheet,
  most: number,
  random: Random,
): Generator<number, NestResultSheet | undefined> {
  const items = sheet.placed.map(({ item }) => item);
  const { pile } = pileOf(table, items, [sheet.stock]);
  for (const [i, { item, x, y, turn }] of sheet.placed.entries()) {
    const n = table.order.items[item]!.turns.indexOf(turn);
    const corner = table.corners[item]![n]!;
    put(pile, i, 0, n, x - corner.x, y - corner.y);
  }
  const strip = beginFrom(pile, random);
  const begun = strip.best.length;
  for (let share = 0; share < parts; share++) {
    const before = pile.tried;
    advance(strip, most / parts, share / parts);
    yield pile.tried - before;
  }
  if (strip.best.length >= begun * (1 - 1e-9)) return undefined;
  restore(pile, strip.best.lying);
  for (const i of leftmostFirst(pile)) settle(pile, i);
  for (const i of leftmostFirst(pile)) if (isSmall(pile, i)) moveInward(pile, i, strip.best.length, random);
  return { stock: sheet.stock, placed: items.map((item, i) => laidAt(table, pile, i, item, 0)) };
}

function leftmostFirst({ boxes, loose }: Pile): number[] {
  return [...Array(loose).keys()].sort((a, b) => boxes[4 * a]! - boxes[4 * b]! || a - b);
}

const isClearIn =
  (pile: Pile, i: number, shape: Shape): IsClear =>
  (x, y) => {
    for (let j = 0; j < pile.count; j++)
      if (j !== i && collide(shape, pile.shape[j]!, pile.x[j]! - x, pile.y[j]! - y)) return false;
    return true;
  };

function settle(pile: Pile, i: number): void {
  const shape = pile.shape[i]!;
  const at = { x: pile.x[i]!, y: pile.y[i]! };
  const { x, y } = settled(shape, at, [pile.rooms[0]!, pile.rooms[1]!], 1, isClearIn(pile, i, shape));
  put(pile, i, 0, pile.turn[i]!, x, y);
}

/** A part as small as this, mm, comes loose most easily; near a sheet's edge there is least to hold it (common practice, no source). */
const small = 120;
const fromEdge = 60;
const places = 300;

function isSmall({ shape }: Pile, i: number): boolean {
  const { x0, y0, x1, y1 } = shape[i]!;
  return x1 - x0 < small && y1 - y0 < small;
}

/** Where it costs nothing, a part that lies at an edge of the sheet is put among the others, as they stand. */
function moveInward(pile: Pile, i: number, length: number, random: Random): void {
  const shape = pile.shape[i]!;
  const [x0, y0, , y1] = pile.rooms;
  const low = { x: x0! + fromEdge - shape.x0, y: y0! + fromEdge - shape.y0 };
  const high = { x: x0! + length - shape.x1, y: y1! - fromEdge - shape.y1 };
  if (pile.x[i]! >= low.x && pile.y[i]! >= low.y && pile.y[i]! <= high.y) return;
  const isClear = isClearIn(pile, i, shape);
  for (let n = 0; n < places; n++) {
    const x = low.x + random() * (high.x - low.x);
    const y = low.y + random() * (high.y - low.y);
    if (x <= high.x && y <= high.y && isClear(x, y)) {
      put(pile, i, 0, pile.turn[i]!, x, y);
      return;
    }
  }
}
