import type { Lane } from "../lanes.js";
import { adopt, advance, beginStrip, type StripLayout, type StripOrder } from "./strip.js";

/** What a lane is told at a barrier: the best of all lanes, and how far to go now. */
export type StripRound = { readonly best: StripLayout | undefined; readonly tries: number; readonly share: number };

/** What a lane does between barriers. */
export function stripRounds(order: StripOrder, seed: number): (round: StripRound) => StripLayout {
  const search = beginStrip(order, seed);
  return ({ best, tries, share }) => {
    if (best !== undefined) adopt(search, best);
    return advance(search, tries, share);
  };
}

/** Runs all lanes up to the next barrier. Returns the shortest layout; of two alike, the first lane's. */
export async function runRound(
  lanes: readonly Lane<StripRound, StripLayout>[],
  round: StripRound,
): Promise<StripLayout> {
  const found = await Promise.all(lanes.map((lane) => lane.run(round)));
  return found.reduce((best, layout) => (layout.length < best.length ? layout : best));
}
