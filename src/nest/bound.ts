import { areaOfRegion } from "../geometry/measure.js";
import type { NestItem, NestOrder, NestStock } from "./engine.js";
import { type Lie, liesOf } from "./lies.js";

/** A count of sheets to buy that no layout of the order can go below, and the reason in words. */
export type Bound = { readonly count: number; readonly why: string };

/**
 * The larger of two simple bounds; only items that are laid may be in the order.
 *
 * Area:     what the blanks cover, less all that is in the rack, over the largest sheet one can buy. With cuts from edge
 *           to edge a blank covers its extents, and one kerf is added to the sides of blanks and sheets alike.
 * Large:    solid rectangles longer and wider than half of every sheet meet in its middle: no two share one.
 * Source:   own derivation; the large-item bound is the simplest case of the dual feasible functions for packing.
 */
export function boundOf(order: Pick<NestOrder, "items" | "stock" | "edgeToEdge">): Bound {
  const area = areaBound(order);
  const large = largeBound(order);
  if (Math.max(area, large.count) === 0) return { count: 0, why: "the rack may take them all" };
  if (large.count > area) return { count: large.count, why: `${large.items} blanks of which no two share a sheet` };
  return { count: area, why: "the area of the blanks" };
}

function areaBound(order: Parameters<typeof boundOf>[0]): number {
  const kerf = order.edgeToEdge ? leastGap(order.items) : 0;
  const blanks = sum(order.items.map((item) => (order.edgeToEdge ? coveredBy(item, kerf) : areaOfRegion(item.shape))));
  const usable = (row: NestStock) => (row.length - 2 * row.trim + kerf) * (row.width - 2 * row.trim + kerf);
  const rack = sum(order.stock.map((row) => (row.count === undefined ? 0 : row.count * usable(row))));
  const largest = Math.max(0, ...order.stock.map((row) => (row.count === undefined ? usable(row) : 0)));
  return largest > 0 ? Math.max(0, Math.ceil((blanks - rack) / largest - 1e-9)) : 0;
}

function largeBound(order: Parameters<typeof boundOf>[0]): Bound & { readonly items: number } {
  const gap = leastGap(order.items);
  const large = order.items.filter((item) => {
    const lies = liesOf(item);
    return isSolid(item, lies, order.edgeToEdge) && order.stock.every((row) => fillsMiddle(lies, row, gap));
  });
  const rack = sum(order.stock.map((row) => row.count ?? 0));
  return { count: Math.max(0, large.length - rack), items: large.length, why: "" };
}

const coveredBy = (item: NestItem, kerf: number): number =>
  Math.min(...liesOf(item).map((lie) => (lie.w + kerf) * (lie.h + kerf)));

const isSolid = (item: NestItem, lies: readonly Lie[], edgeToEdge: boolean): boolean =>
  edgeToEdge || lies.every((lie) => areaOfRegion(item.shape) > lie.w * lie.h * (1 - 1e-9));

/** However it lies on such a sheet, if it fits at all, another like it finds no place beside it nor above it. */
function fillsMiddle(lies: readonly Lie[], row: NestStock, gap: number): boolean {
  const length = row.length - 2 * row.trim;
  const width = row.width - 2 * row.trim;
  return lies.every((lie) => lie.w > length || lie.h > width || (2 * lie.w + gap > length && 2 * lie.h + gap > width));
}

const leastGap = (items: readonly NestItem[]) => items.reduce((least, item) => Math.min(least, item.gap), 1e9);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
