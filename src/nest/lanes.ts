/** One of several searches side by side, told at every barrier how to go on. Where it runs makes no difference to what it finds. */
export type Lane<Round, Found> = { readonly run: (round: Round) => Promise<Found>; readonly end: () => void };

/** A lane in this thread. */
export function laneHere<Round, Found>(run: (round: Round) => Found): Lane<Round, Found> {
  return { run: (round) => Promise.resolve(run(round)), end: () => {} };
}

/** Seeds of the lanes of one search. */
export const laneSeeds = (seed: number, lanes: number): number[] =>
  Array.from({ length: lanes }, (_, lane) => Math.imul(seed, 0x9e3779b1) + Math.imul(lane, 0x85ebca6b));
