import { beginOf, type Contents, contentsOf, worthOn } from "./contents.js";
import type { Found } from "./found.js";

/** What the parts of an order share a sheet's cost by: a price for each kind, in sheets. */
export type Prices = {
  readonly each: readonly number[];
  /** As many sheets as the prices of all parts wanted add up to, less what those dearer than a sheet are too dear by. */
  readonly sheets: number;
};

/**
 * Prices of kinds at which what was found is worth about a sheet each: dear is what is hard to lay.
 *
 * `wanted`: how many of each kind. `sheets`: how many do so far.
 *
 * Method:   the covering of what is wanted by what was found, relaxed by Lagrange; the prices moved along the subgradient, with
 *           steps that halve where nothing is gained.
 * Source:   M. Held, P. Wolfe and H. P. Crowder, "Validation of subgradient optimization", Mathematical Programming 6,
 *           1974 (from memory).
 */
export function priced(
  finds: readonly Found[],
  wanted: readonly number[],
  from: readonly number[],
  sheets: number,
): Prices {
  const contents = contentsOf(finds);
  const most = Int32Array.from(finds, (_, i) => timesIn(contents, i, wanted));
  let best: Prices = { each: from, sheets: Number.NEGATIVE_INFINITY };
  const prices = Float64Array.from(from);
  let stride = 1;
  let idle = 0;
  for (let n = 0; n < steps; n++) {
    const { missing, bound } = shortOf(contents, most, wanted, prices);
    if (bound > best.sheets + 1e-3) {
      best = { each: [...prices], sheets: bound };
      idle = 0;
    } else if (++idle >= patience) {
      prices.set(best.each);
      stride /= 2;
      idle = 0;
      continue;
    }
    const norm = missing.reduce((sum, by) => sum + by * by, 0);
    if (norm === 0) break;
    const step = (stride * Math.max(0.5, sheets - bound)) / norm;
    for (let kind = 0; kind < prices.length; kind++) prices[kind] = Math.max(0, prices[kind]! + step * missing[kind]!);
  }
  return best;
}

const steps = 60;
const patience = 10;

/** Where every one dearer than a sheet is cut as often as it may be: what is missing of each kind, and the bound. */
function shortOf(
  contents: Contents,
  most: Int32Array,
  wanted: readonly number[],
  prices: Float64Array,
): { readonly missing: Float64Array; readonly bound: number } {
  const missing = Float64Array.from(wanted);
  const { kinds, counts, ends } = contents;
  let bound = wanted.reduce((sum, open, kind) => sum + open * prices[kind]!, 0);
  for (let i = 0; i < ends.length; i++) {
    const gain = 1 - worthOn(contents, i, prices);
    if (gain >= 0) continue;
    bound += most[i]! * gain;
    for (let n = beginOf(contents, i); n < ends[i]!; n++) {
      const kind = kinds[n]!;
      missing[kind] = missing[kind]! - most[i]! * counts[n]!;
    }
  }
  return { missing, bound };
}

/** How often a sheet can be cut so with nothing in it too much; once at least. */
function timesIn(contents: Contents, i: number, wanted: readonly number[]): number {
  let times = Number.POSITIVE_INFINITY;
  for (let n = beginOf(contents, i); n < contents.ends[i]!; n++)
    times = Math.min(times, Math.floor(wanted[contents.kinds[n]!]! / contents.counts[n]!));
  return Math.max(1, times);
}
