import type { Grid } from "./grid.js";
import type { Side } from "./side.js";

/** How a piece is cut up: it is one blank, or is cut into two, side by side along the sheet or one above the other. */
export type Filling =
  | { readonly kind: number; readonly lie: number }
  | { readonly across: boolean; readonly one: Filling; readonly other: Filling };

/** What every piece of a grid is worth, row by row of its lengths along the sheet. */
export type Values = Float64Array;

/**
 * What pieces are worth by what can be cut from them at best, each kind as often as one likes, every cut from edge to edge.
 *
 * Method: from the smallest piece to the largest: the dearest blank that it holds, or the best of all cuts into two.
 * Source: J. E. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting", J. Operational Research Society
 *         36, 1985; G. F. Cintra, F. K. Miyazawa, Y. Wakabayashi and E. C. Xavier, "Algorithms for two-dimensional cutting
 *         stock and strip packing problems using dynamic programming and column generation", European J. of Operational
 *         Research 191, 2008 (both from memory).
 */
export function valuesOf({ x, y, lays }: Grid, worths: readonly number[]): Values {
  const rows = x.lengths.length;
  const columns = y.lengths.length;
  const values = new Float64Array(rows * columns);
  for (const lay of lays) {
    const at = lay.x * columns + lay.y;
    values[at] = Math.max(values[at]!, worths[lay.kind]!);
  }
  for (let i = 0; i < rows; i++) {
    const row = i * columns;
    if (i > 0) for (let j = 0; j < columns; j++) raise(values, row + j, values[row - columns + j]!);
    for (let cut = x.from[i]!; cut < x.from[i + 1]!; cut++)
      raiseRow(values, row, x.one[cut]! * columns, x.other[cut]! * columns, columns);
    raiseAlong(values, row, y);
  }
  return values;
}

function raise(values: Values, at: number, value: number): void {
  if (value > values[at]!) values[at] = value;
}

function raiseRow(values: Values, row: number, one: number, other: number, columns: number): void {
  for (let j = 0; j < columns; j++) {
    const value = values[one + j]! + values[other + j]!;
    if (value > values[row + j]!) values[row + j] = value;
  }
}

function raiseAlong(values: Values, row: number, { from, one, other, lengths }: Side): void {
  for (let j = 0; j < lengths.length; j++) {
    let most = values[row + j]!;
    if (j > 0) most = Math.max(most, values[row + j - 1]!);
    for (let cut = from[j]!; cut < from[j + 1]!; cut++) {
      const value = values[row + one[cut]!]! + values[row + other[cut]!]!;
      if (value > most) most = value;
    }
    values[row + j] = most;
  }
}

export const mostOf = (values: Values): number => values[values.length - 1] ?? 0;

/** How the whole sheet is cut up to be worth that; undefined where nothing is worth anything. */
export function fillingOf(grid: Grid, worths: readonly number[], values: Values): Filling | undefined {
  const { x, y, lays } = grid;
  const columns = y.lengths.length;
  return fillingAt(x.lengths.length - 1, columns - 1);

  function fillingAt(i: number, j: number): Filling | undefined {
    const value = values[i * columns + j]!;
    if (value <= 0) return undefined;
    const lay = lays.find((each) => each.x <= i && each.y <= j && worths[each.kind] === value);
    if (lay) return { kind: lay.kind, lie: lay.lie };
    return cutAcross(i, j, value) ?? cutAlong(i, j, value) ?? fillingBelow(i, j, value);
  }

  function cutAcross(i: number, j: number, value: number): Filling | undefined {
    for (let cut = x.from[i]!; cut < x.from[i + 1]!; cut++) {
      const [one, other] = [x.one[cut]!, x.other[cut]!];
      if (values[one * columns + j]! + values[other * columns + j]! === value)
        return joined(true, fillingAt(one, j), fillingAt(other, j));
    }
    return undefined;
  }

  function cutAlong(i: number, j: number, value: number): Filling | undefined {
    for (let cut = y.from[j]!; cut < y.from[j + 1]!; cut++) {
      const [one, other] = [y.one[cut]!, y.other[cut]!];
      if (values[i * columns + one]! + values[i * columns + other]! === value)
        return joined(false, fillingAt(i, one), fillingAt(i, other));
    }
    return undefined;
  }

  /** A piece that is no better than one a little smaller. */
  function fillingBelow(i: number, j: number, value: number): Filling | undefined {
    if (i > 0 && values[(i - 1) * columns + j] === value) return fillingAt(i - 1, j);
    return j > 0 && values[i * columns + j - 1] === value ? fillingAt(i, j - 1) : undefined;
  }
}

const joined = (across: boolean, one: Filling | undefined, other: Filling | undefined): Filling | undefined =>
  one && other ? { across, one, other } : (one ?? other);

/** How often each kind is cut from a filling. */
export function countsOf(filling: Filling, kinds: number): number[] {
  const counts = Array.from({ length: kinds }, () => 0);
  count(filling);
  return counts;

  function count(one: Filling): void {
    if ("kind" in one) counts[one.kind]!++;
    else {
      count(one.one);
      count(one.other);
    }
  }
}
