import type { Random } from "../../random.js";
import type { Found } from "./found.js";

/** Sheets chosen, and what is still missing of each kind with them; below nought: so many too much. */
export type Choice = {
  readonly chosen: readonly Found[];
  readonly missing: readonly number[];
  readonly lost: number;
};

/**
 * Chooses so many sheets that as little as may be of what is wanted is missing, each kind counted by its price.
 *
 * Method:   one after another that which adds most; then some are given back and others chosen, by chance not always the
 *           best, and kept where not much more is missing.
 * Source:   choosing sheets found by a search as a set cover: M. Monaci and P. Toth, "A set-covering-based heuristic
 *           approach for bin-packing problems", INFORMS Journal on Computing 18(1), 2006 (from memory); own form.
 */
export function choose(
  finds: readonly Found[],
  wanted: readonly number[],
  prices: readonly number[],
  count: number,
  tries: number,
  random: Random,
): Choice {
  // what is free by its price is wanted all the same
  const weights = prices.map((price) => price + 1e-4);
  const fill = (from: readonly Found[], blinks: number) => filled(from, finds, wanted, weights, count, blinks, random);
  let now = fill([], 0);
  let best = now;
  for (let n = 0; n < tries && best.lost > 0; n++) {
    const next = fill(without(now.chosen, 1 + Math.floor(random() * mostOut), random), blinks);
    if (next.lost > now.lost + slack * random()) continue;
    now = next;
    if (now.lost < best.lost) best = now;
  }
  return best;
}

const mostOut = 6;
const blinks = 0.3;
const slack = 0.02;

function filled(
  from: readonly Found[],
  finds: readonly Found[],
  wanted: readonly number[],
  weights: readonly number[],
  count: number,
  blinks: number,
  random: Random,
): Choice {
  const chosen = [...from];
  const missing = [...wanted];
  for (const one of chosen) take(one, missing);
  while (chosen.length < count) {
    const next = best(finds, missing, weights, blinks, random);
    if (next === undefined) break;
    chosen.push(next);
    take(next, missing);
  }
  const lost = missing.reduce((sum, open, kind) => sum + Math.max(0, open) * weights[kind]!, 0);
  return { chosen, missing, lost };
}

function take({ kinds }: Found, missing: number[]): void {
  for (const kind of kinds) missing[kind] = missing[kind]! - 1;
}

/** What adds most of what is missing. */
function best(
  finds: readonly Found[],
  missing: readonly number[],
  weights: readonly number[],
  blinks: number,
  random: Random,
): Found | undefined {
  const open = missing.map((count, kind) => (count > 0 ? weights[kind]! : 0));
  let found: Found | undefined;
  let most = 0;
  for (const one of finds) {
    let gain = 0;
    for (const kind of one.kinds) gain += open[kind]!;
    if (gain <= most) continue;
    if (one.repeats) gain = gainOf(one, missing, weights);
    if (gain <= most || (blinks > 0 && random() < blinks)) continue;
    most = gain;
    found = one;
  }
  return found;
}

/** Of a kind that lies there several times only as many count as are missing. */
function gainOf({ kinds }: Found, missing: readonly number[], weights: readonly number[]): number {
  const left = new Map<number, number>();
  return kinds.reduce((gain, kind) => {
    const count = left.get(kind) ?? missing[kind]!;
    left.set(kind, count - 1);
    return count > 0 ? gain + weights[kind]! : gain;
  }, 0);
}

function without(chosen: readonly Found[], count: number, random: Random): readonly Found[] {
  const kept = [...chosen];
  for (let n = 0; n < count && kept.length > 0; n++) kept.splice(Math.floor(random() * kept.length), 1);
  return kept;
}
