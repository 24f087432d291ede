import { areaOfRegion } from "../geometry/measure.js";
import { asItIs, type DualFeasible, halves, rounded, steps } from "./dualFeasible.js";
import type { NestItem, NestOrder, NestStock } from "./engine.js";
import { type Lie, liesOf } from "./lies.js";
import { rectangleIn } from "./rectangles/opening.js";
import { kindsOf } from "./rectangles/patterns/kind.js";
import { leastCost, mostKinds, patternsFor, workFor } from "./rectangles/patterns/patterns.js";

/** A count of sheets to buy that no layout of the order can go below, and the reason in words. */
export type Bound = { readonly count: number; readonly why: string };

type Order = Pick<NestOrder, "items" | "stock" | "edgeToEdge">;

/**
 * The largest of four bounds; only items that are laid may be in the order. Of equal ones the plainest reason stands.
 *
 * Area:     what the blanks cover, less all that is in the rack, over the largest sheet one can buy. With cuts from edge
 *           to edge a blank covers its extents, and one kerf is added to the sides of blanks and sheets alike.
 * Large:    solid rectangles longer and wider than half of every sheet meet in its middle: no two share one.
 * Weighed:  rectangles, or those within blanks of other shapes, their sides weighed by dual feasible functions; no sheet
 *           takes more than 1 of the products. Sheets of the rack count as the largest there is.
 * Patterns: with cuts from edge to edge and few sizes, the least sheets by the best ways to fill one, also in parts.
 * Source:   own derivation of the first; S. P. Fekete and J. Schepers, "A general framework for bounds for higher-
 *           dimensional orthogonal packing problems", Mathematical Methods of Operations Research 60, 2004 (from memory),
 *           of the last, of which the second is a case.
 */
export function boundOf(order: Order): Bound {
  const area = areaBound(order);
  const large = largeBound(order);
  const weighed = weighedBound(order);
  const patterns = patternBound(order, Math.max(area, large.count, weighed));
  if (Math.max(area, large.count, weighed, patterns) === 0) return { count: 0, why: "the rack may take them all" };
  if (patterns > Math.max(area, large.count, weighed))
    return {
      count: patterns,
      why: "the most of these sizes that sheets cut from edge to edge can give",
    };
  if (weighed > Math.max(area, large.count))
    return { count: weighed, why: "the area of the blanks, with what is too narrow beside them for any other" };
  if (large.count > area) return { count: large.count, why: `${large.items} blanks of which no two share a sheet` };
  return { count: area, why: "the area of the blanks" };
}

function areaBound(order: Order): number {
  const kerf = order.edgeToEdge ? leastGap(order.items) : 0;
  const blanks = sum(order.items.map((item) => (order.edgeToEdge ? coveredBy(item, kerf) : areaOfRegion(item.shape))));
  const usable = (row: NestStock) => (row.length - 2 * row.trim + kerf) * (row.width - 2 * row.trim + kerf);
  const rack = sum(order.stock.map((row) => (row.count === undefined ? 0 : row.count * usable(row))));
  const largest = Math.max(0, ...order.stock.map((row) => (row.count === undefined ? usable(row) : 0)));
  return largest > 0 ? Math.max(0, Math.ceil((blanks - rack) / largest - 1e-9)) : 0;
}

function largeBound(order: Order): Bound & { readonly items: number } {
  const gap = betweenSides(order);
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

/** A rectangle that is solid board, in the ways in which it may lie, as shares of the largest sheet's sides. */
type Share = { readonly w: number; readonly h: number };

/** Pairs of functions to try, times blanks, at most: keeps the bound within a few hundredths of a second. */
const mostWeighings = 4e6;

function weighedBound(order: Order): number {
  const { stock, items } = order;
  const gap = betweenSides(order);
  const length = Math.max(...stock.map((row) => row.length - 2 * row.trim)) + gap;
  const width = Math.max(...stock.map((row) => row.width - 2 * row.trim)) + gap;
  const blanks = items
    .map((item) =>
      solidLies(item, order.edgeToEdge).map(({ w, h }) => ({ w: (w + gap) / length, h: (h + gap) / width })),
    )
    .map((lies) => lies.map(({ w, h }) => ({ w: w - 1e-12, h: h - 1e-12 })).filter(({ w, h }) => w <= 1 && h <= 1));
  const known = blanks.filter((lies) => lies.length > 0);
  const sheets = known.length === 0 ? 0 : Math.ceil(heaviest(known, Math.abs(length - width) < 1e-9) - 1e-6);
  return Math.max(0, sheets - sum(stock.map((row) => row.count ?? 0)));
}

/** The solid rectangle of an item in each of its lies; none where it is turned by other than quarters or is a ring. */
function solidLies(item: NestItem, edgeToEdge: boolean): readonly Share[] {
  if (edgeToEdge) return liesOf(item);
  if (item.shape.holes.length > 0 || item.turns.some((turn) => Math.abs(Math.sin(2 * turn)) > 1e-9)) return [];
  const { w, h } = rectangleIn(item.shape.outer);
  if (w <= 0 || h <= 0) return [];
  const upright = item.turns.some((turn) => Math.abs(Math.cos(turn)) > 0.5);
  const across = item.turns.some((turn) => Math.abs(Math.cos(turn)) < 0.5);
  return [...(upright ? [{ w, h }] : []), ...(across ? [{ w: h, h: w }] : [])];
}

/** The most that the blanks weigh together by any pair of functions, one for each side. */
function heaviest(blanks: readonly (readonly Share[])[], square: boolean): number {
  const count = Math.max(4, Math.floor(Math.sqrt(mostWeighings / blanks.length)));
  const both = blanks.flat();
  const sides = square ? both.flatMap(({ w, h }) => [w, h]) : undefined;
  const across = functionsFor(sides ?? both.map(({ w }) => w), count);
  const up = functionsFor(sides ?? both.map(({ h }) => h), count);
  const wide = across.map((f) => blanks.map((lies) => lies.map(({ w, h }) => [f(w), f(h)] as const)));
  const high = up.map((f) => blanks.map((lies) => lies.map(({ w, h }) => [f(w), f(h)] as const)));
  let most = 0;
  for (const f of wide)
    for (const g of high) {
      let least = 0;
      let mean = 0;
      for (let i = 0; i < blanks.length; i++) {
        least += lightest(f[i]!, g[i]!);
        if (square) mean += eitherWay(f[i]!, g[i]!);
      }
      most = Math.max(most, least, mean);
    }
  return most;
}

type Weights = readonly (readonly [number, number])[];

/** However it lies, a blank weighs no less than this. */
function lightest(f: Weights, g: Weights): number {
  let least = f[0]![0] * g[0]![1];
  for (let i = 1; i < f.length; i++) least = Math.min(least, f[i]![0] * g[i]![1]);
  return least;
}

/**
 * On square sheets every layout can be turned by a quarter: the mean of both ways holds for all blanks together, also
 * for those that must not be turned, as only their sides are looked at
 * (F. Clautiaux, A. Jouglet and J. El Hayek, "A new lower bound for the non-oriented two-dimensional bin-packing
 * problem", Operations Research Letters 35, 2007; from memory).
 */
function eitherWay(f: Weights, g: Weights): number {
  const [fw, fh] = f[0]!;
  const [gw, gh] = g[0]!;
  return (fw * gh + fh * gw) / 2;
}

/** Functions whose steps lie where the sides themselves do, at most so many. */
function functionsFor(sides: readonly number[], most: number): readonly DualFeasible[] {
  const at = [...new Set(sides.flatMap((side) => [side, 1 - side]).map((side) => Math.round(side * 1e9) / 1e9 - 2e-9))]
    .filter((side) => side > 0 && side <= 0.5)
    .sort((a, b) => a - b);
  const few = every(at, Math.max(1, Math.floor((most - wholeParts) / 2)));
  const parts = Array.from({ length: Math.min(wholeParts, Math.max(1, most / 4)) }, (_, i) => steps(i + 1));
  return [asItIs, ...parts, ...few.map(rounded), ...few.map(halves)];
}

const wholeParts = 12;

/** So many of a list, evenly spread over it. */
function every<T>(list: readonly T[], most: number): readonly T[] {
  if (list.length <= most) return list;
  return Array.from({ length: most }, (_, i) => list[Math.floor((i * list.length) / most)]!);
}

/** Given up as soon as it turns out to be no more than `known`. */
function patternBound({ items, stock, edgeToEdge }: Order, known: number): number {
  if (!edgeToEdge || items.length === 0) return 0;
  const kerf = leastGap(items);
  const grown = ({ w, h }: Omit<Lie, "turn">) => ({ w: w + kerf, h: h + kerf });
  const kinds = kindsOf(
    items.map((item) => ({
      lies: liesOf(item)
        .map(grown)
        .map((lie) => ({ ...lie, least: lie })),
    })),
  );
  if (kinds.length > mostKinds) return 0;
  const sheets = stock.map(({ length, width, trim, count }) => ({
    ...grown({ w: length - 2 * trim, h: width - 2 * trim }),
    cost: count === undefined ? 1 : 0,
    ...(count !== undefined && { count }),
  }));
  const work = workFor(items.length);
  const found = patternsFor(kinds, sheets, work, known);
  if (found === undefined || found.cover.cost <= known) return 0;
  return Math.max(0, Math.ceil(leastCost(kinds, sheets, found.cover.prices, work) - 1e-6));
}

/** Rectangles that keep a distance, which may be from corner to corner, keep this between their sides one way or the other. */
const betweenSides = ({ items, edgeToEdge }: Order): number => leastGap(items) / (edgeToEdge ? 1 : Math.SQRT2);

const leastGap = (items: readonly NestItem[]) => items.reduce((least, item) => Math.min(least, item.gap), 1e9);
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
