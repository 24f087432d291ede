import type { NestItem, NestOrder } from "../engine.js";
import { type Lie, liesOf } from "../lies.js";
import { openingsOf } from "./opening.js";
import type { Rest } from "./rest.js";

/** A way in which a tile may lie: the item's extents with one kerf added, and the space inside its openings. */
export type TileLie = Lie & { readonly openings: readonly Rest[] };

/** What is laid in place of an item. */
export type Tile = {
  /** Its place in the order. */
  readonly item: number;
  readonly lies: readonly TileLie[];
  /** What it wants free all round beyond the kerf, mm. */
  readonly pad: number;
  readonly long: number;
  readonly short: number;
};

/** The width that every cut takes: the smallest gap of the order, mm. */
export const kerfOf = (order: Pick<NestOrder, "items">): number =>
  order.items.reduce((least, item) => Math.min(least, item.gap), Number.POSITIVE_INFINITY);

export function tilesOf(order: NestOrder): readonly Tile[] {
  const kerf = kerfOf(order);
  return order.items.map((item, i) => tileOf(item, i, kerf, order.edgeToEdge));
}

function tileOf(item: NestItem, index: number, kerf: number, edgeToEdge: boolean): Tile {
  const lies = liesOf(item).map((lie) => ({
    turn: lie.turn,
    w: lie.w + kerf,
    h: lie.h + kerf,
    openings: edgeToEdge ? [] : openingsOf(item, lie.turn, kerf),
  }));
  const { w, h } = lies[0] ?? { w: 0, h: 0 };
  return { item: index, lies, pad: item.gap - kerf, long: Math.max(w, h), short: Math.min(w, h) };
}
