/** Something that gives so much of each need at a cost. */
export type Column = { readonly cost: number; readonly gives: readonly number[] };

/** Columns in amounts that meet all needs at the least cost; parts of a column are allowed. */
export type Cover = {
  readonly cost: number;
  /** By the columns. */
  readonly amounts: readonly number[];
  /** What one more of each need would cost. */
  readonly prices: readonly number[];
  /** What the amounts rest on, to go on from when there are more columns. */
  readonly basis: Basis;
  /** Numbers looked at to find it. */
  readonly steps: number;
};

/**
 * As many columns as there are needs, which meet them exactly: by their places, or `~need` for as much of that need as is
 * left over. `inverse`: of the matrix of what they give, row by row.
 */
export type Basis = { readonly members: readonly number[]; readonly inverse: Float64Array };

/**
 * The least cost by which needs are met.
 *
 * Method:  revised simplex, with the inverse of the basis kept whole. Where numbers leave it no way on, it ends with amounts
 *          that meet the needs at a cost that is not the least.
 * Needs:   columns by which they can be met at all, and a basis to begin with: that of fewer columns, or `aloneWith`.
 * Source:  G. B. Dantzig, "Linear programming and extensions", Princeton 1963, chapter 9; against going round in circles
 *          R. G. Bland, "New finite pivoting rules for the simplex method", Mathematics of Operations Research 2, 1977 (both
 *          from memory).
 */
export function leastCover(columns: readonly Column[], needs: readonly number[], from: Basis): Cover {
  const members = [...from.members];
  const inverse = from.inverse.slice();
  const amounts = members.map((_, i) => Math.max(0, rowTimes(inverse, i, needs)));
  let still = 0;
  let pivots = 0;
  for (; pivots < mostPivots; pivots++) {
    const prices = pricesOf(members, inverse, columns);
    const next = entering(columns, prices, members, still > 2 * needs.length);
    if (next === undefined) break;
    const gives = givesOf(next, columns, needs.length);
    const change = members.map((_, i) => rowTimes(inverse, i, gives));
    const out = leaving(amounts, change, members);
    if (out === undefined) break;
    still = amounts[out]! > tiny ? 0 : still + 1;
    pivot(inverse, amounts, change, out);
    members[out] = next;
  }
  const used = columns.map(() => 0);
  for (const [i, member] of members.entries()) if (member >= 0) used[member] = amounts[i]!;
  return {
    cost: columns.reduce((sum, column, i) => sum + column.cost * used[i]!, 0),
    amounts: used,
    prices: [...pricesOf(members, inverse, columns)],
    basis: { members, inverse },
    steps: (pivots + 1) * needs.length * (2 * needs.length + columns.length),
  };
}

/** A basis of columns that give one need each, the first the first and so on; `limits`: needs less than 0, met by nothing. */
export function aloneWith(columns: readonly Column[], limits: number): Basis {
  const size = columns.length + limits;
  const inverse = new Float64Array(size * size);
  for (let i = 0; i < size; i++) inverse[i * size + i] = i < columns.length ? 1 / columns[i]!.gives[i]! : -1;
  return { members: Array.from({ length: size }, (_, i) => (i < columns.length ? i : ~i)), inverse };
}

const mostPivots = 3_000;
/** Below this a number is the noise of adding up. */
const tiny = 1e-9;

/** The column of a member: a column's own, or what takes away of one need. */
function givesOf(member: number, columns: readonly Column[], size: number): readonly number[] {
  if (member >= 0) return columns[member]!.gives;
  return Array.from({ length: size }, (_, need) => (need === ~member ? -1 : 0));
}

function pricesOf(members: readonly number[], inverse: Float64Array, columns: readonly Column[]): Float64Array {
  const size = members.length;
  const prices = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const cost = members[i]! >= 0 ? columns[members[i]!]!.cost : 0;
    if (cost !== 0) for (let need = 0; need < size; need++) prices[need]! += cost * inverse[i * size + need]!;
  }
  return prices;
}

/** What lowers the cost most; `first`: the first that does. */
function entering(
  columns: readonly Column[],
  prices: Float64Array,
  members: readonly number[],
  first: boolean,
): number | undefined {
  let best: number | undefined;
  let least = -tiny;
  const look = (member: number, saves: number) => {
    if (saves >= least || (first && best !== undefined) || members.includes(member)) return;
    best = member;
    least = saves;
  };
  for (let need = 0; need < prices.length; need++) look(~need, prices[need]!);
  for (let i = 0; i < columns.length; i++) look(i, columns[i]!.cost - dot(prices, columns[i]!.gives));
  return best;
}

/** What is used up first; of several the one that stands first among all, so that nothing goes round in circles. */
function leaving(
  amounts: readonly number[],
  change: readonly number[],
  members: readonly number[],
): number | undefined {
  let out: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, by] of change.entries()) {
    if (by <= tiny) continue;
    const ratio = amounts[i]! / by;
    if (ratio < least - tiny || (ratio < least + tiny && out !== undefined && members[i]! < members[out]!)) out = i;
    least = Math.min(least, ratio);
  }
  return out;
}

function pivot(inverse: Float64Array, amounts: number[], change: readonly number[], out: number): void {
  const size = amounts.length;
  const by = change[out]!;
  const pivotRow = inverse.subarray(out * size, (out + 1) * size);
  for (let need = 0; need < size; need++) pivotRow[need]! /= by;
  amounts[out]! /= by;
  for (let i = 0; i < size; i++) {
    const part = change[i]!;
    if (i === out || part === 0) continue;
    for (let need = 0; need < size; need++) inverse[i * size + need]! -= part * pivotRow[need]!;
    amounts[i] = Math.max(0, amounts[i]! - part * amounts[out]!);
  }
}

function rowTimes(inverse: Float64Array, row: number, by: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < by.length; i++) sum += inverse[row * by.length + i]! * by[i]!;
  return sum;
}

function dot(a: Float64Array, b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
