import type { NestResultSheet } from "../engine.js";
import type { Random } from "../random.js";
import { put, restore } from "./pile.js";
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
  return { stock: sheet.stock, placed: items.map((item, i) => laidAt(table, pile, i, item, 0)) };
}
