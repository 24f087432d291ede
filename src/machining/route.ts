import type { Point } from "../geometry/profile.js";

/** A stop of the way: where the bit comes down and where it comes up again. */
export type Stop = { readonly start: Point; readonly end: Point };

/**
 * An order of stops that keeps the ways between them short: each time to the nearest that is left, then stretches of the
 * order turned round as long as that shortens it (2-opt, G. A. Croes, "A Method for Solving Traveling-Salesman Problems",
 * Operations Research 6, 1958; from memory). The same stops in the same order always give the same way.
 *
 * Returns: the places of the stops in the list, in the order in which they are met.
 */
export function shortWay(stops: readonly Stop[], from: Point): readonly number[] {
  const order = nearestFirst(stops, from);
  for (let round = 0; round < mostRounds; round++) if (!shortened(order, stops, from)) break;
  return order;
}

const mostRounds = 30; // most ways settle in five

function nearestFirst(stops: readonly Stop[], from: Point): number[] {
  const left = new Set(stops.keys());
  const order: number[] = [];
  for (let at = from; left.size > 0; ) {
    let [best, away] = [-1, Number.POSITIVE_INFINITY];
    for (const i of left) {
      const distance = gap(at, stops[i]!.start);
      if (distance < away) [best, away] = [i, distance];
    }
    left.delete(best);
    order.push(best);
    at = stops[best]!.end;
  }
  return order;
}

/** Turns stretches of the order round in place, once through all pairs; whether any of them was better. A stop is run
 *  from its start to its end all the same, so the inner ways are nearly as long turned round: they count as equal. */
function shortened(order: number[], stops: readonly Stop[], from: Point): boolean {
  let better = false;
  const startAt = (k: number) => stops[order[k]!]!.start;
  for (let i = 0; i < order.length - 1; i++) {
    const before = i === 0 ? from : stops[order[i - 1]!]!.end;
    for (let j = i + 1; j < order.length; j++) {
      const after = j + 1 < order.length ? startAt(j + 1) : undefined;
      const now = gap(before, startAt(i)) + (after ? gap(stops[order[j]!]!.end, after) : 0);
      const then = gap(before, startAt(j)) + (after ? gap(stops[order[i]!]!.end, after) : 0);
      if (then >= now - 1e-9) continue;
      for (let a = i, b = j; a < b; a++, b--) [order[a], order[b]] = [order[b]!, order[a]!];
      better = true;
    }
  }
  return better;
}

const gap = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
