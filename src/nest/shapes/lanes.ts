import { adopt, advance, beginStrip, type StripLayout, type StripOrder } from "./strip.js";

/** What a lane is told at a barrier: the best of all lanes, and how far to go now. */
export type Round = { readonly best: StripLayout | undefined; readonly tries: number; readonly share: number };

/** One of several searches side by side. Where it runs makes no difference to what it finds. */
export type Lane = { readonly run: (round: Round) => Promise<StripLayout>; readonly end: () => void };

/** A lane in this thread. */
export function laneHere(order: StripOrder, seed: number): Lane {
  const runRound = roundsOf(order, seed);
  return { run: (round) => Promise.resolve(runRound(round)), end: () => {} };
}

/** What a lane does, wherever it runs. */
export function roundsOf(order: StripOrder, seed: number): (round: Round) => StripLayout {
  const search = beginStrip(order, seed);
  return ({ best, tries, share }) => {
    if (best !== undefined) adopt(search, best);
    return advance(search, tries, share);
  };
}

/** Seeds of the lanes of one search. */
export const laneSeeds = (seed: number, lanes: number): number[] =>
  Array.from({ length: lanes }, (_, lane) => Math.imul(seed, 0x9e3779b1) + Math.imul(lane, 0x85ebca6b));

/** Runs all lanes up to the next barrier. Returns the shortest layout; of two alike, the first lane's. */
export async function runRound(lanes: readonly Lane[], round: Round): Promise<StripLayout> {
  const found = await Promise.all(lanes.map((lane) => lane.run(round)));
  return found.reduce((best, layout) => (layout.length < best.length ? layout : best));
}
