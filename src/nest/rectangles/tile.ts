import type { NestItem, NestOrder } from "../engine.js";
import { type Lie, liesOf } from "../lies.js";
import { blankSize } from "../saw/blankSize.js";
import { type Sawing, widestKerf } from "../saw/sawing.js";
import { openingsOf } from "./opening.js";
import type { Rest } from "./rest.js";

/** A way in which a tile may lie: the item's extents with one kerf added, and the space inside its openings. */
export type TileLie = Lie & {
  readonly openings: readonly Rest[];
  /** Less will do where the sheet itself ends: what is left on to be routed off is not needed there. */
  readonly least: { readonly w: number; readonly h: number };
};

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

/** The width that every cut takes: at saws the widest kerf, else the smallest gap of the order, mm. */
export const kerfOf = ({ items, sawing }: Pick<NestOrder, "items" | "sawing">): number =>
  sawing ? widestKerf(sawing) : items.reduce((least, item) => Math.min(least, item.gap), Number.POSITIVE_INFINITY);

export function tilesOf(order: NestOrder): readonly Tile[] {
  const kerf = kerfOf(order);
  return order.items.map((item, i) =>
    order.sawing ? sawnTile(item, i, kerf, order.sawing) : tileOf(item, i, kerf, order.edgeToEdge),
  );
}

function tileOf(item: NestItem, index: number, kerf: number, edgeToEdge: boolean): Tile {
  const lies = liesOf(item).map((lie) => {
    const size = { w: lie.w + kerf, h: lie.h + kerf };
    return { turn: lie.turn, ...size, least: size, openings: edgeToEdge ? [] : openingsOf(item, lie.turn, kerf) };
  });
  return { item: index, lies, pad: item.gap - kerf, ...sidesOf(lies) };
}

function sawnTile(item: NestItem, index: number, kerf: number, sawing: Sawing): Tile {
  const lies = liesOf(item).map((lie) => {
    const { w, h } = blankSize(lie, item, sawing);
    return {
      turn: lie.turn,
      w: w + kerf,
      h: h + kerf,
      least: { w: Math.min(w, lie.w) + kerf, h: Math.min(h, lie.h) + kerf },
      openings: [],
    };
  });
  return { item: index, lies, pad: 0, ...sidesOf(lies) };
}

function sidesOf([lie]: readonly TileLie[]): Pick<Tile, "long" | "short"> {
  const { w, h } = lie ?? { w: 0, h: 0 };
  return { long: Math.max(w, h), short: Math.min(w, h) };
}
