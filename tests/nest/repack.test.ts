import { describe, expect, it } from "vitest";
import { rectangle } from "../../src/geometry/shapes.js";
import { boundOf } from "../../src/nest/bound.js";
import type { NestItem, NestStock } from "../../src/nest/engine.js";
import { randomFrom } from "../../src/nest/random.js";
import { nestRectangles } from "../../src/nest/rectangles/search.js";

const sheet: NestStock = { name: "sheet", length: 100, width: 100, trim: 0, cost: 1 };

/** `count` rectangles with whole sides from 1 to 100: the fifth class of J. Berkey and P. Wang, "Two-dimensional finite
 *  bin-packing algorithms", J. Operational Research Society 38, 1987. */
function classFive(seed: number, count: number): NestItem[] {
  const random = randomFrom(seed);
  const side = () => 1 + Math.floor(random() * 100);
  return Array.from({ length: count }, (_, i) => ({
    id: `r${i}`,
    shape: { outer: rectangle(0, 0, side(), side(), "edge"), holes: [] },
    gap: 0,
    turns: [0, Math.PI / 2],
  }));
}

const sheetsFor = (items: readonly NestItem[], iterations: number, stock: readonly NestStock[] = [sheet]) =>
  nestRectangles({ items, stock, edgeToEdge: true, seed: 1, iterations });

describe("repacking", () => {
  it("saves sheets that layouts made from nothing do not save, and stays at or above the bound", () => {
    let [made, repacked, bound] = [0, 0, 0];
    for (let seed = 1; seed <= 2; seed++) {
      const items = classFive(seed, 100);
      made += sheetsFor(items, 60).sheets.length;
      repacked += sheetsFor(items, 800).sheets.length;
      bound += boundOf({ items, stock: [sheet], edgeToEdge: true }).count;
    }
    expect(repacked).toBeLessThan(made);
    expect(repacked).toBeGreaterThanOrEqual(bound);
  });

  it("loses no part, and takes no more of a sheet than there is", () => {
    for (let seed = 1; seed <= 12; seed++) {
      const items = classFive(seed, 30);
      const rack = [
        { ...sheet, count: 2, cost: 0 },
        { ...sheet, length: 180, count: 3, cost: 3 },
        { ...sheet, count: 4 },
      ];
      const { sheets, left } = sheetsFor(items, 150, rack);
      const laid = sheets.flatMap(({ placed }) => placed.map(({ item }) => item));
      expect([...laid, ...left].sort((a, b) => a - b)).toEqual(items.map((_, i) => i));
      rack.forEach((row, i) => {
        expect(sheets.filter(({ stock }) => stock === i).length).toBeLessThanOrEqual(row.count!);
      });
    }
  });
});
