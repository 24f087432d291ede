import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { NestOrder } from "../../src/nest/engine.js";
import { laneHere } from "../../src/nest/lanes.js";
import { type Progress, searchHere, searchInLanes, sheetRounds } from "../../src/nest/search.js";
import { disc, items, orderOf, panel, ringOf, sheet, triangle } from "./shapes/orders.js";

const order = (edgeToEdge: boolean, iterations: number): NestOrder => ({
  ...orderOf(
    items(
      [
        [4, triangle(300, 220)],
        [2, ringOf(240, 150)],
        [3, disc(120)],
        [5, panel(260, 140)],
      ],
      8,
    ),
    [sheet(700, 560, { trim: 5 })],
    iterations,
  ),
  edgeToEdge,
});

const inLanes = (edgeToEdge: boolean, rounds: number) => {
  const told: Progress[] = [];
  const goOn = (progress: Progress) => told.push(progress) < rounds;
  const here = (each: NestOrder, seed: number) => laneHere(sheetRounds(each, seed));
  return searchInLanes(order(edgeToEdge, 1e6), here, goOn).then((found) => ({ ...found, told }));
};

describe("a search in lanes", () => {
  for (const edgeToEdge of [false, true])
    it(`finds the same by a count of iterations, edge to edge: ${edgeToEdge}`, async () => {
      const { iterations, result } = await inLanes(edgeToEdge, 2);
      expect(iterations).toBeGreaterThan(1);
      expect(searchHere(order(edgeToEdge, iterations))).toEqual(result);
    });

  it("tells at every barrier how far it is, and what it found never grows worse", async () => {
    const { told } = await inLanes(false, 3);
    expect(told.map(({ iterations }) => iterations / told[0]!.iterations)).toEqual([1, 2, 3]);
    const costs = told.map(({ found }) => found.worth[1]!);
    expect([...costs].sort((a, b) => b - a)).toEqual(costs);
  });

  it("ends by itself when the order's iterations are done", async () => {
    const here = (each: NestOrder, seed: number) => laneHere(sheetRounds(each, seed));
    const asked = order(true, 250);
    const { iterations, result } = await searchInLanes(asked, here, () => true);
    expect(iterations).toBe(250);
    expect(result).toEqual(searchHere(asked));
  });

  it("gives a first layout for a single iteration", () => {
    expect(searchHere(order(false, 1)).left).toEqual([]);
  });

  // a thread runs compiled files; `npm test` builds them first. Both sides are those, so that an old build is no fault
  const compiled = (file: string) => new URL(`../../dist/nest/${file}`, import.meta.url);
  it.skipIf(!existsSync(compiled("threads.js")))("is the same in two threads as in one", async () => {
    const { laneInThread } = await import(/* @vite-ignore */ compiled("threads.js").href);
    const ours = await import(/* @vite-ignore */ compiled("search.js").href);
    const threads = (each: NestOrder, seed: number) => laneInThread("sheets", each, seed);
    const inThreads = await ours.searchInLanes(order(false, 1e6), threads, () => false);
    expect(inThreads.result).toEqual(ours.searchHere(order(false, inThreads.iterations)));
  });
});
