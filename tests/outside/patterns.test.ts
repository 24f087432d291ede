import { describe, expect, it } from "vitest";
import { fillingOf, mostOf, valuesOf } from "../../src/nest/rectangles/patterns/filling.js";
import { gridOf } from "../../src/nest/rectangles/patterns/grid.js";
import { leastCost, patternsFor } from "../../src/nest/rectangles/patterns/patterns.js";
import { kindOf } from "../nest/rectangles/patterns/everyCut.js";

function mostArea(sheet: readonly [number, number], sizes: readonly (readonly [number, number])[]): number {
  const kinds = sizes.map(([w, h]) => kindOf(w, h));
  const areas = sizes.map(([w, h]) => w * h);
  const grid = gridOf(kinds, { w: sheet[0], h: sheet[1] }, 1e9, "cuttable")!;
  const values = valuesOf(grid, areas);
  expect(grid.isExact).toBe(true);
  expect(fillingOf(grid, areas, values)).toBeDefined();
  return mostOf(values);
}

describe("the best filling of one sheet, against published results", () => {
  it("is the optimum of Herz's example", () => {
    // J. C. Herz, "Recursive computational procedure for two-dimensional stock cutting", IBM J. Res. Dev. 16, 1972: sizes
    // and the optimum of 12348 from memory
    const sizes = [
      [18, 65],
      [24, 27],
      [21, 13],
      [36, 17],
      [54, 20],
    ] as const;
    expect(mostArea([127, 98], sizes)).toBe(12348);
  });

  it("is the optimum of Beasley's first unconstrained problem", () => {
    // J. E. Beasley, "Algorithms for unconstrained two-dimensional guillotine cutting", J. Opl Res. Soc. 36, 1985, problem
    // 1: sizes and the optimum of 56460 from memory
    const sizes = [
      [167, 184],
      [114, 118],
      [167, 152],
      [83, 140],
      [70, 86],
      [143, 166],
      [120, 160],
      [66, 148],
      [87, 141],
      [69, 165],
    ] as const;
    expect(mostArea([250, 250], sizes)).toBe(56460);
  });
});

describe("the least cover by patterns, against published results", () => {
  it("is 452.25 rolls in Chvatal's example, so that 453 are the fewest", () => {
    // V. Chvatal, "Linear programming", New York 1983, chapter 13: 97 of 45, 610 of 36, 395 of 31 and 211 of 14 inches from
    // rolls of 100; the value from memory. A roll is a sheet of which only the length is cut.
    const wanted = [
      [45, 97],
      [36, 610],
      [31, 395],
      [14, 211],
    ] as const;
    const kinds = wanted.map(([length, count]) => kindOf(length, 1, count));
    const rolls = [{ w: 100, h: 1, cost: 1 }];
    const { cover } = patternsFor(kinds, rolls, 1e8)!;
    expect(cover.cost).toBeCloseTo(452.25, 6);
    expect(leastCost(kinds, rolls, cover.prices, 1e8)).toBeCloseTo(452.25, 6);
  });
});
