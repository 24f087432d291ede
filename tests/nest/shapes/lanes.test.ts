import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Lane, laneHere, laneSeeds } from "../../../src/nest/lanes.js";
import { runRound, type StripRound, stripRounds } from "../../../src/nest/shapes/lanes.js";
import type { StripLayout, StripOrder } from "../../../src/nest/shapes/strip.js";
import { type StripInstance, stripFaults } from "../../../src/nest/shapes/stripFaults.js";

/**
 * Twelve shapes of our own. By hand, in blocks: triangles in pairs make three squares of 5, two above each other, 10 long;
 * angles in pairs make two rectangles of 6 x 5, 6 long; the two panels 6: 22 in all.
 */
const instance: StripInstance = {
  name: "pairs",
  stripHeight: 10,
  allowedRotationsDeg: [0, 180],
  items: [
    {
      id: 0,
      demand: 6,
      polygon: [
        [0, 0],
        [5, 0],
        [0, 5],
      ],
    },
    {
      id: 1,
      demand: 4,
      polygon: [
        [0, 0],
        [4, 0],
        [4, 2],
        [2, 2],
        [2, 5],
        [0, 5],
      ],
    },
    {
      id: 2,
      demand: 2,
      polygon: [
        [0, 0],
        [3, 0],
        [3, 10],
        [0, 10],
      ],
    },
  ],
};
const byHand = 22;

const order: StripOrder = {
  width: instance.stripHeight,
  forms: instance.items.map(({ demand, polygon }) => ({
    loops: [polygon.map(([x, y]) => ({ x, y }))],
    count: demand,
    turns: [0, Math.PI],
  })),
};

async function search(
  laneOf: (order: StripOrder, seed: number) => Lane<StripRound, StripLayout>,
  rounds: number,
): Promise<StripLayout[]> {
  const lanes = laneSeeds(5, 2).map((seed) => laneOf(order, seed));
  const layouts: StripLayout[] = [];
  for (let n = 0; n < rounds; n++)
    layouts.push(await runRound(lanes, { best: layouts.at(-1), tries: 30_000, share: n / rounds }));
  for (const lane of lanes) lane.end();
  return layouts;
}

const placementsOf = ({ lying }: StripLayout) =>
  instance.items
    .flatMap((item) => Array.from({ length: item.demand }, () => item))
    .map(({ id, polygon }, i) => {
      const sign = lying[4 * i + 1] === 0 ? 1 : -1;
      const x = lying[4 * i + 2]! + Math.min(...polygon.map(([px]) => sign * px));
      const y = lying[4 * i + 3]! + Math.min(...polygon.map(([, py]) => sign * py));
      return { id, x, y, rotationDeg: sign === 1 ? 0 : 180 };
    });

const here = (order: StripOrder, seed: number) => laneHere(stripRounds(order, seed));

describe("a strip searched in lanes", () => {
  it("is sound, never grows longer from barrier to barrier, and ends shorter than blocks laid by hand", async () => {
    const layouts = await search(here, 10);
    for (const [n, layout] of layouts.entries())
      if (n > 0) expect(layout.length).toBeLessThanOrEqual(layouts[n - 1]!.length);
    const last = layouts.at(-1)!;
    expect(stripFaults(instance, placementsOf(last), last.length)).toEqual([]);
    expect(last.length).toBeLessThan(byHand);
  });

  it("is the same again", async () => {
    expect(await search(here, 3)).toEqual(await search(here, 3));
  });

  // a thread runs compiled files; `npm test` builds them first. Both sides are those, so that an old build is no fault
  const compiled = (file: string) => new URL(`../../../dist/nest/${file}`, import.meta.url);
  it.skipIf(!existsSync(compiled("threads.js")))("is the same in two threads as in one", async () => {
    const { laneInThread } = await import(/* @vite-ignore */ compiled("threads.js").href);
    const { stripRounds: ours } = await import(/* @vite-ignore */ compiled("shapes/lanes.js").href);
    const inThread = await search((order, seed) => laneInThread("strip", order, seed), 3);
    expect(inThread).toEqual(await search((order, seed) => laneHere(ours(order, seed)), 3));
  });
});
