import { isBetter, type NestFound, type NestOrder, type NestResult, type NestSearch } from "./engine.js";
import { type Lane, laneSeeds } from "./lanes.js";
import { beginRectangles } from "./rectangles/search.js";
import { beginShapes } from "./shapes/sheets.js";

/** What a lane is told at a barrier: the best of all lanes, and how far to go now. */
export type SheetRound = { readonly best: NestFound | undefined; readonly iterations: number };

/** Lanes of a search, and iterations of each between two barriers: both are part of what a seed means. A shorter search has one lane. */
const lanes = 2;
const perRound = 200;

/** By true shapes at the machine; by cuts from edge to edge where a person saws. */
const beginSearch = (order: NestOrder): NestSearch => (order.edgeToEdge ? beginRectangles(order) : beginShapes(order));

/** What a lane does between barriers. */
export function sheetRounds(order: NestOrder, seed: number): (round: SheetRound) => NestFound {
  const search = beginSearch({ ...order, seed });
  return ({ best, iterations }) => {
    if (best !== undefined) search.adopt(best);
    return search.advance(iterations);
  };
}

/** Searches for as many iterations as the order asks for, lane after lane in this thread. */
export function searchHere(order: NestOrder): NestResult {
  const running = seedsOf(order).map((seed) => sheetRounds(order, seed));
  const rounds = roundsOf(order.iterations);
  let step = rounds.next();
  while (!step.done) {
    const round = step.value;
    step = rounds.next(running.map((run) => run(round)));
  }
  return step.value.result;
}

/** How far a search is: asked at every barrier whether to go on. */
export type Progress = { readonly order: NestOrder; readonly found: NestFound; readonly iterations: number };

/**
 * The same in lanes handed in, such as threads, for as many iterations as the order asks for or until it is told to stop.
 * With as many iterations as it got, `searchHere` finds the same.
 *
 * Errors: what a lane throws.
 */
export async function searchInLanes(
  order: NestOrder,
  laneOf: (order: NestOrder, seed: number) => Lane<SheetRound, NestFound>,
  goOn: (progress: Progress) => boolean,
): Promise<{ readonly result: NestResult; readonly iterations: number }> {
  const running = seedsOf(order).map((seed) => laneOf(order, seed));
  try {
    const rounds = roundsOf(order.iterations);
    let iterations = 0;
    for (let step = rounds.next(); ; ) {
      if (step.done) return { result: step.value.result, iterations };
      const round = step.value;
      const found = await Promise.all(running.map((lane) => lane.run(round)));
      iterations += round.iterations;
      const best = bestOf(found);
      if (!goOn({ order, found: best, iterations })) return { result: best.result, iterations };
      step = rounds.next(found);
    }
  } finally {
    for (const lane of running) lane.end();
  }
}

const seedsOf = ({ seed, iterations }: NestOrder): number[] => laneSeeds(seed, iterations < perRound ? 1 : lanes);

/** Round after round up to so many iterations: takes what every lane found, gives the best in the end. */
function* roundsOf(iterations: number): Generator<SheetRound, NestFound, readonly NestFound[]> {
  let best: NestFound | undefined;
  for (let done = 0; done < iterations || best === undefined; done += perRound)
    best = bestOf(yield { best, iterations: Math.max(1, Math.min(perRound, iterations - done)) });
  return best;
}

/** Of two alike, the first lane's. */
function bestOf([first, ...others]: readonly NestFound[]): NestFound {
  return others.reduce((best, found) => (isBetter(found.worth, best.worth) ? found : best), first!);
}
