import { aloneWith, type Column, type Cover, leastCover } from "./cover.js";
import { countsOf, type Filling, fillingOf, mostOf, valuesOf } from "./filling.js";
import { type Grid, gridOf } from "./grid.js";
import { type Blank, fitsOn, type Kind, sizeOn } from "./kind.js";

/** A way to fill one sheet, and how many of each kind it gives. `sheet`: its place among the sheets. */
export type Pattern = { readonly sheet: number; readonly filling: Filling; readonly counts: readonly number[] };

/** Ways to fill sheets, and the least cost by which they give what is wanted if parts of a sheet could be had. */
export type Patterns = { readonly patterns: readonly Pattern[]; readonly cover: Cover };

/**
 * Ways to fill sheets, of which some together give what is wanted at the least cost.
 *
 * Method:  begun with sheets full of one kind. The least cover by the patterns so far says what a piece of each kind costs;
 *          the sheet that is worth most by these prices is a new pattern, if it is worth more than it costs; and so on.
 *          First on grids with few lengths, then on finer ones, for `work` steps in all, or until the cost is down to
 *          `enough`.
 * Source:  P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of two and more dimensions", Operations
 *          Research 13, 1965 (from memory).
 * Returns: undefined where some kind fits on no sheet of which there are as many as needed, or sheets are of many sizes.
 */
export function patternsFor(
  kinds: readonly Kind[],
  sheets: readonly Blank[],
  work: number,
  enough = 0,
): Patterns | undefined {
  if (sheets.length > mostSizes) return undefined;
  const patterns: Pattern[] = [];
  for (const kind of kinds.keys()) {
    const full = fullOf(kind, kinds, sheets);
    if (full === undefined) return undefined;
    patterns.push(full);
  }
  let cover = coverBy(patterns, kinds, sheets);
  let left = work;
  for (const share of shares) {
    const grids = sheets.map((sheet) => gridOf(kinds, sheet, work * share, "cuttable"));
    const effort = grids.reduce((sum, grid) => sum + (grid?.work ?? 0), 0);
    while (left >= effort && cover.cost > enough) {
      left -= effort + cover.steps;
      const more = worthMore(kinds, sheets, grids, cover);
      if (more.length === 0) break;
      patterns.push(...more);
      cover = coverBy(patterns, kinds, sheets, cover);
    }
    if (grids.every((grid) => grid?.isExact)) break;
  }
  return { patterns, cover };
}

/** Orders of more sizes have too few pieces of each for patterns to help. */
export const mostKinds = 40;

/** Each size of sheet, and each offcut, is a search of its own for every new pattern. */
const mostSizes = 8;

/** Steps to take over an order of so many pieces: about half of a thousandth of a second for each of them. */
export const workFor = (pieces: number): number => Math.min(4e7, 1.5e5 * pieces);

/** How much of all the work one filling may take, on each of the grids. */
const shares = [0.005, 0.04] as const;

const boundShare = 0.2;

/** Worth more than they cost by no more than this are alike. */
const alike = 1e-6;

/** The least cover of what is wanted; begun anew, or from one by fewer patterns. */
export function coverBy(
  patterns: readonly Pattern[],
  kinds: readonly Kind[],
  sheets: readonly Blank[],
  from?: Cover,
): Cover {
  const few = sheets.flatMap(({ count }, sheet) => (count === undefined ? [] : [{ sheet, count }]));
  const columns = patterns.map(
    ({ counts, sheet }): Column => ({
      cost: sheets[sheet]!.cost,
      gives: [...counts, ...few.map((one) => (one.sheet === sheet ? -1 : 0))],
    }),
  );
  const needs = [...kinds.map(({ wanted }) => wanted), ...few.map(({ count }) => -count)];
  return leastCover(columns, needs, from?.basis ?? aloneWith(columns.slice(0, kinds.length), few.length));
}

/** On each of the sheets the best pattern by the prices of a cover, where it is worth more than it costs. */
function worthMore(
  kinds: readonly Kind[],
  sheets: readonly Blank[],
  grids: readonly (Grid | undefined)[],
  { prices }: Cover,
): readonly Pattern[] {
  const worths = kinds.map((_, kind) => Math.max(0, prices[kind]!));
  let limit = kinds.length;
  return sheets.flatMap(({ cost, count }, sheet): Pattern[] => {
    const price = cost + (count === undefined ? 0 : Math.max(0, prices[limit++]!));
    const grid = grids[sheet];
    if (grid === undefined) return [];
    const values = valuesOf(grid, worths);
    if (mostOf(values) <= price + alike * Math.max(price, alike)) return [];
    const filling = fillingOf(grid, worths, values);
    return filling ? [{ sheet, filling, counts: countsOf(filling, kinds.length) }] : [];
  });
}

/** A sheet full of one kind, all lying alike, of the sheets and lies that where a piece costs least. */
function fullOf(kind: number, kinds: readonly Kind[], sheets: readonly Blank[]): Pattern | undefined {
  let best: Pattern | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [sheet, blank] of sheets.entries()) {
    if (blank.count !== undefined) continue;
    for (const [lie, lying] of kinds[kind]!.lies.entries()) {
      const { w, h } = sizeOn(lying, blank);
      const [across, up] = [Math.floor(blank.w / w + alike), Math.floor(blank.h / h + alike)];
      if (across * up === 0 || blank.cost / (across * up) >= least) continue;
      least = blank.cost / (across * up);
      const filling = repeated(repeated({ kind, lie }, across, true), up, false);
      best = { sheet, filling, counts: countsOf(filling, kinds.length) };
    }
  }
  return best;
}

const repeated = (one: Filling, times: number, across: boolean): Filling =>
  Array.from({ length: times - 1 }, () => one).reduce<Filling>((all) => ({ across, one: all, other: one }), one);

/**
 * What no layout of the kinds costs less than, however it is made.
 *
 * Method: if by some prices no sheet is worth more than `s` times its cost, then what is wanted costs its worth over `s` at
 *         least. Of a few sheets at hand each may be worth more than it costs, and that is taken off. Any prices do, so
 *         nothing depends on how exactly they were found; what a sheet is worth is never set too low.
 * Source: A. A. Farley, "A note on bounding a class of linear programming problems, including cutting stock problems",
 *         Operations Research 38, 1990 (from memory).
 */
export function leastCost(
  kinds: readonly Kind[],
  sheets: readonly Blank[],
  prices: readonly number[],
  work: number,
): number {
  const worths = kinds.map((_, kind) => Math.max(0, prices[kind]!));
  const most = sheets.map((sheet) => {
    if (!kinds.some(({ lies }) => lies.some((lie) => fitsOn(lie, sheet)))) return 0;
    const grid = gridOf(kinds, sheet, (work * boundShare) / sheets.length, "over");
    return grid ? mostOf(valuesOf(grid, worths)) : undefined;
  });
  if (most.some((value) => value === undefined)) return 0;
  const scale = Math.max(...sheets.map(({ cost, count }, i) => (count === undefined ? most[i]! / cost : 0)));
  const wanted = kinds.reduce((sum, kind, i) => sum + kind.wanted * worths[i]!, 0);
  const atHand = sheets.reduce((sum, { cost, count = 0 }, i) => sum + count * Math.max(0, most[i]! / scale - cost), 0);
  return scale > 0 ? wanted / scale - atHand : 0;
}
