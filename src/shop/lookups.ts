import type { Bit, Bolt, Screw, Shop, ThreadedInsert } from "../model/shop.js";
import { rules } from "./rules.js";

export { splitScrew } from "./screwName.js";

/** The row of a table, never something that every object has by itself ("constructor"). */
export function rowOf<T>(table: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}

/** A bolt by its name without length: "M6 button black". */
export function boltRow(shop: Shop, name: string): Bolt | undefined {
  return rowOf(shop.bolts, name);
}

/** A screw by its diameter: "4.0" or "#8"; "4" finds "4.0". */
export function screwRow(shop: Shop, name: string): Screw | undefined {
  const exact = rowOf(shop.screws, name);
  if (exact !== undefined) return exact;
  const same = Object.keys(shop.screws).find((known) => Number(known) === Number(name.replace(",", ".")));
  return same === undefined ? undefined : shop.screws[same];
}

/** The threaded inserts for a thread, shortest first. */
export function insertsFor(
  shop: Shop,
  thread: string,
): readonly { readonly name: string; readonly insert: ThreadedInsert }[] {
  return Object.entries(shop.inserts)
    .filter(([, insert]) => insert.thread === thread)
    .map(([name, insert]) => ({ name, insert }))
    .sort((a, b) => a.insert.length - b.insert.length);
}

/** How deep the hole for an insert is drilled, mm. */
export function insertHoleDepth(insert: ThreadedInsert): number {
  return insert.length + rules.insertHoleDeeper.value;
}

/** The thinnest bit of some kinds, by its measured diameter where there is one. */
export function smallestBit(
  shop: Shop,
  kinds: readonly Bit["kind"][],
): { readonly name: string; readonly bit: Bit } | undefined {
  return Object.entries(shop.bits)
    .filter(([, bit]) => kinds.includes(bit.kind))
    .map(([name, bit]) => ({ name, bit }))
    .sort((a, b) => cutOf(a.bit) - cutOf(b.bit))
    .at(0);
}

/** What a bit really cuts, mm: its measured diameter, or the one on its label. */
export function cutOf(bit: Bit): number {
  return bit.measured ?? bit.d;
}
