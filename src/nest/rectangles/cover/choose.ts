import type { Random } from "../../random.js";
import type { Pattern } from "./pool.js";

/** Patterns chosen, and what is still missing of each kind with them; below nought: so many too much. */
export type Choice = {
  readonly chosen: readonly Pattern[];
  readonly missing: readonly number[];
  readonly lost: number;
};

/**
 * Chooses so many patterns that as little as may be of what is wanted is missing, each kind counted by its price.
 *
 * Method:   one after another that which adds most; then some are given back and others chosen, by chance not always the
 *           best, and kept where not much more is missing.
 * Source:   choosing sheets found by a search as a set cover: M. Monaci and P. Toth, "A set-covering-based heuristic
 *           approach for bin-packing problems", INFORMS Journal on Computing 18(1), 2006 (from memory); own form.
 */
export function choose(
  patterns: readonly Pattern[],
  wanted: readonly number[],
  prices: readonly number[],
  count: number,
  tries: number,
  random: Random,
): Choice {
  // what is free by its price is wanted all the same
  const weights = prices.map((price) => price + 1e-4);
  const fill = (from: readonly Pattern[], blinks: number) =>
    filled(from, patterns, wanted, weights, count, blinks, random);
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
  from: readonly Pattern[],
  patterns: readonly Pattern[],
  wanted: readonly number[],
  weights: readonly number[],
  count: number,
  blinks: number,
  random: Random,
): Choice {
  const chosen = [...from];
  const missing = [...wanted];
  for (const pattern of chosen) take(pattern, missing);
  while (chosen.length < count) {
    const next = best(patterns, missing, weights, blinks, random);
    if (next === undefined) break;
    chosen.push(next);
    take(next, missing);
  }
  const lost = missing.reduce((sum, open, kind) => sum + Math.max(0, open) * weights[kind]!, 0);
  return { chosen, missing, lost };
}

function take({ kinds }: Pattern, missing: number[]): void {
  for (const kind of kinds) missing[kind] = missing[kind]! - 1;
}

/** The pattern that adds most of what is missing. */
function best(
  patterns: readonly Pattern[],
  missing: number[],
  weights: readonly number[],
  blinks: number,
  random: Random,
): Pattern | undefined {
  let found: Pattern | undefined;
  let most = 0;
  for (const pattern of patterns) {
    const { kinds } = pattern;
    let gain = 0;
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i]!;
      const before = missing[kind]!;
      missing[kind] = before - 1;
      if (before > 0) gain += weights[kind]!;
    }
    for (let i = 0; i < kinds.length; i++) missing[kinds[i]!]!++;
    if (gain <= most || (blinks > 0 && random() < blinks)) continue;
    most = gain;
    found = pattern;
  }
  return found;
}

function without(chosen: readonly Pattern[], count: number, random: Random): readonly Pattern[] {
  const kept = [...chosen];
  for (let n = 0; n < count && kept.length > 0; n++) kept.splice(Math.floor(random() * kept.length), 1);
  return kept;
}
