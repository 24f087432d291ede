import type { Random } from "../random.js";
import { type Lying, lyingOf, type Pile, reckonAll, restore, totalOverlap } from "./pile.js";
import { type Effort, moveToBetter } from "./place.js";

export type Patience = {
  readonly effort: Effort;
  /** Passes without a smaller total before one gives up for this round. */
  readonly passes: number;
  /** Rounds that begin again from the least overlap so far. */
  readonly rounds: number;
};

/**
 * Moves colliding parts until none is left: guided local search. After every pass the pairs that still overlap weigh
 * more, so that a pair which is stuck pushes others away (Voudouris & Tsang 1999; for packing Egeblad et al. 2007).
 *
 * Yields:   after every part moved, so that a budget can stop it; `over` is asked after every pass whether to give up.
 * Returns:  the least overlap found; the pile is left as it was then, if not given up. 0 is a layout without any.
 */
export function* untangle(
  pile: Pile,
  random: Random,
  patience: Patience,
  over: () => boolean,
): Generator<void, number> {
  pile.weight.fill(1);
  reckonAll(pile);
  let least = totalOverlap(pile);
  let best: Lying = lyingOf(pile);
  for (let round = 0; round < patience.rounds && least > 0; round++) {
    const before = least;
    let idle = 0;
    while (idle < patience.passes) {
      yield* pass(pile, random, patience.effort);
      if (over()) return least;
      const total = totalOverlap(pile);
      if (total === 0) return 0;
      if (total < least) {
        idle = total < 0.98 * least ? 0 : idle;
        least = total;
        best = lyingOf(pile);
      } else idle++;
      reweigh(pile);
    }
    restore(pile, best);
    reckonAll(pile);
    if (least < 0.98 * before) round = -1;
  }
  restore(pile, best);
  return least;
}

function* pass(pile: Pile, random: Random, effort: Effort): Generator<void, void> {
  for (const i of shuffled(colliding(pile), random)) {
    if (!collides(pile, i)) continue;
    moveToBetter(pile, i, random, effort);
    yield;
  }
}

function colliding(pile: Pile): number[] {
  const list: number[] = [];
  for (let i = 0; i < pile.loose; i++) if (collides(pile, i)) list.push(i);
  return list;
}

function collides({ count, overlap }: Pile, i: number): boolean {
  for (let k = i * count; k < (i + 1) * count; k++) if (overlap[k]! > 0) return true;
  return false;
}

function shuffled(list: number[], random: Random): number[] {
  for (let k = list.length - 1; k > 0; k--) {
    const j = Math.floor(random() * (k + 1));
    [list[k], list[j]] = [list[j]!, list[k]!];
  }
  return list;
}

/** Pairs that overlap gain weight in proportion, the worst the most; others slowly lose theirs. */
function reweigh({ count, loose, overlap, weight }: Pile): void {
  let worst = 0;
  for (let i = 0; i < loose; i++) for (let j = i + 1; j < count; j++) worst = Math.max(worst, overlap[i * count + j]!);
  for (let i = 0; i < loose; i++)
    for (let j = i + 1; j < count; j++) {
      const o = overlap[i * count + j]!;
      const w = weight[i * count + j]!;
      const next = o > 0 ? w * (1.2 + (0.8 * o) / worst) : Math.max(1, w * 0.95);
      weight[i * count + j] = next;
      weight[j * count + i] = next;
    }
}
