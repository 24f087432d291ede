import { areaOfRegion, extentsOf } from "../../geometry/measure.js";
import type { Point } from "../../geometry/profile.js";
import { clearArea } from "../../shop/clearArea.js";
import type { NestOrder, NestStock } from "../engine.js";
import { layBlank } from "../placed.js";
import { shapesOf } from "./forms.js";
import { grownLoops } from "./grown.js";
import type { Loop } from "./loops.js";
import { obstaclesOf } from "./obstacles.js";
import type { Fields } from "./overlap.js";
import type { Shape } from "./shape.js";

/** What touches does not collide, mm: far below what any machine can tell, far above noise. */
const hair = 1e-6;

/** All that the search on sheets must know of an order, worked out once. */
export type Table = {
  readonly order: NestOrder;
  /** Half of the largest gap, mm. */
  readonly half: number;
  /** Of each item: its shapes in each turn, where its extents' corner lies from its origin, and their size. */
  readonly turns: readonly (readonly Shape[])[];
  readonly corners: readonly (readonly Point[])[];
  readonly sizes: readonly (readonly { readonly w: number; readonly h: number }[])[];
  readonly areas: readonly number[];
  /** What must not be covered, of each row of the stock, from the sheet's corner. */
  readonly obstacles: readonly (readonly Shape[])[];
  readonly usable: readonly number[];
  readonly fields: Fields;
};

/** `like`: the table of an order that differs in its turns alone, whose fields serve this one too. */
export function tableOf(order: NestOrder, like?: Table): Table {
  const half = order.items.reduce((most, item) => Math.max(most, item.gap), 0) / 2;
  const forms: { loops: readonly Loop[]; turns: readonly number[] }[] = [];
  const places = new Map<string, number>();
  const formOf = (loops: readonly Loop[], turns: readonly number[]): number => {
    const key = JSON.stringify([loops, turns]);
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, forms.length);
    return forms.push({ loops, turns }) - 1;
  };
  const ofItems = order.items.map((item) => formOf(grownLoops(item.shape, half), item.turns));
  const ofStock = order.stock.map((row) => obstaclesOf(row, half).map((loops) => formOf(loops, [0])));
  const { turns, fields } = shapesOf(forms, hair);
  const extents = order.items.map((item) => item.turns.map((turn) => extentsOf(layBlank(item.shape, turn, false))));
  return {
    order,
    half,
    turns: ofItems.map((form) => turns[form]!),
    corners: extents.map((each) => each.map(({ min }) => min)),
    sizes: extents.map((each) => each.map(({ min, max }) => ({ w: max.x - min.x, h: max.y - min.y }))),
    areas: order.items.map((item) => areaOfRegion(item.shape)),
    obstacles: ofStock.map((list) => list.map((form) => turns[form]![0]!)),
    usable: order.stock.map((row) => usableOf(row)),
    fields: like?.fields ?? fields,
  };
}

/** mm2 within the trim and the outline, zones taken off. */
const usableOf = (row: NestStock): number =>
  clearArea(row, row.zones ?? []).reduce((sum, region) => sum + areaOfRegion(region), 0);
