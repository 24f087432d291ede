import type { Random } from "../../random.js";
import { beginOf, type Contents, contentsOf, type Holder, holdersOf } from "./contents.js";
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
  const weights = Float64Array.from(prices, (price) => price + 1e-4);
  const contents = contentsOf(finds);
  const shelf: Shelf = { contents, holders: holdersOf(contents, wanted.length), weights };
  let now = filled(nothingChosen(shelf, finds.length, wanted), shelf, count, 0, random);
  let best = now;
  for (let n = 0; n < tries && best.lost > 0; n++) {
    const fewer = without(now, 1 + Math.floor(random() * mostOut), shelf, random);
    const next = filled(fewer, shelf, count, blinks, random);
    if (next.lost > now.lost + slack * random()) continue;
    now = next;
    if (now.lost < best.lost) best = now;
  }
  return { chosen: best.chosen.map((i) => finds[i]!), missing: [...best.missing], lost: best.lost };
}

const mostOut = 6;
const blinks = 0.3;
const slack = 0.02;

type Shelf = {
  readonly contents: Contents;
  readonly holders: readonly (readonly Holder[])[];
  readonly weights: Float64Array;
};

type State = {
  readonly chosen: number[];
  readonly missing: Float64Array;
  /** What each sheet would add of what is missing. */
  readonly gains: Float64Array;
  lost: number;
};

function nothingChosen({ holders, weights }: Shelf, sheets: number, wanted: readonly number[]): State {
  const gains = new Float64Array(sheets);
  wanted.forEach((open, kind) => {
    for (const { sheet, count } of holders[kind]!)
      gains[sheet] = gains[sheet]! + weights[kind]! * Math.min(count, open);
  });
  return { chosen: [], missing: Float64Array.from(wanted), gains, lost: lostOf(wanted, weights) };
}

const lostOf = (missing: ArrayLike<number>, weights: Float64Array): number =>
  weights.reduce((sum, weight, kind) => sum + Math.max(0, missing[kind]!) * weight, 0);

/** Chooses what adds most, until there are so many. */
function filled(state: State, shelf: Shelf, count: number, overlooked: number, random: Random): State {
  while (state.chosen.length < count) {
    const next = bestOf(state.gains, overlooked, random);
    if (next === undefined) break;
    state.chosen.push(next);
    account(next, -1, state, shelf);
  }
  state.lost = lostOf(state.missing, shelf.weights);
  return state;
}

function bestOf(gains: Float64Array, overlooked: number, random: Random): number | undefined {
  let found: number | undefined;
  let most = noGain;
  for (let i = 0; i < gains.length; i++) {
    if (gains[i]! <= most || (overlooked > 0 && random() < overlooked)) continue;
    most = gains[i]!;
    found = i;
  }
  return found;
}

/** Far less than the least that anything is worth: what is left of adding and taking away. */
const noGain = 1e-9;

/** A copy with some sheets given back. */
function without({ chosen, missing, gains, lost }: State, count: number, shelf: Shelf, random: Random): State {
  const next = { chosen: [...chosen], missing: missing.slice(), gains: gains.slice(), lost };
  for (let n = 0; n < count && next.chosen.length > 0; n++) {
    const [out] = next.chosen.splice(Math.floor(random() * next.chosen.length), 1);
    account(out!, 1, next, shelf);
  }
  return next;
}

/** What is missing once a sheet is chosen (`by` -1) or given back (1), and what all others then add. */
function account(sheet: number, by: 1 | -1, { missing, gains }: State, { contents, holders, weights }: Shelf): void {
  const { ends, kinds, counts } = contents;
  for (let n = beginOf(contents, sheet); n < ends[sheet]!; n++) {
    const kind = kinds[n]!;
    const before = Math.max(0, missing[kind]!);
    missing[kind] = missing[kind]! + by * counts[n]!;
    const after = Math.max(0, missing[kind]!);
    if (before === after) continue;
    const weight = weights[kind]!;
    for (const holder of holders[kind]!) {
      const more = Math.min(holder.count, after) - Math.min(holder.count, before);
      gains[holder.sheet] = gains[holder.sheet]! + weight * more;
    }
  }
}
