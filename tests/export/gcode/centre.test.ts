import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { centreOffset, mostApart, radiiApart } from "../../../src/export/gcode/centre.js";
import { onGrid } from "../../../src/export/gcode/grid.js";

const place = fc.tuple(
  fc.double({ min: -10, max: 3000, noNaN: true }),
  fc.double({ min: -10, max: 1600, noNaN: true }),
);
const grids = [
  { unit: "mm", decimals: 3 },
  { unit: "mm", decimals: 4 },
  { unit: "inch", decimals: 4 },
  { unit: "inch", decimals: 5 },
] as const;

describe("centres of arcs", () => {
  // Limits: TOLERANCE_MM 0.002 and TOLERANCE_INCH 0.0002 of the RS274/NGC interpreter of NISTIR 6556.
  it("are as far from the rounded start as from the rounded end, within what an interpreter takes", () => {
    fc.assert(
      fc.property(
        place,
        place,
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.boolean(),
        fc.nat(3),
        (a, b, size, left, g) => {
          const grid = grids[g]!;
          const scale = grid.unit === "mm" ? 1 : 1 / 25.4;
          const [from, to] = [a, b].map(([x, y]) => [onGrid(grid, x * scale), onGrid(grid, y * scale)] as const);
          fc.pre(Math.hypot(from![0] - to![0], from![1] - to![1]) > 0.5);
          const offset = centreOffset(grid, from!, to!, left ? size : -size);
          expect(offset).toBeDefined();
          expect(radiiApart(from!, to!, offset!)).toBeLessThan(mostApart[grid.unit]);
          for (const value of offset!) expect(onGrid(grid, value)).toBe(value);
        },
      ),
      { seed: 4, numRuns: 2000 },
    );
  });

  it("are those of the true circle for a quarter turn", () => {
    const bulge = Math.tan(Math.PI / 8);
    expect(centreOffset(grids[1], [20, 10], [10, 20], bulge)).toEqual([-10, 0]);
    expect(centreOffset(grids[1], [20, 10], [10, 20], -bulge)).toEqual([0, 10]);
  });

  it("are not given where the digits are too few for both radii to agree", () => {
    expect(centreOffset({ unit: "mm", decimals: 1 }, [0, 0], [10, 7.7], 0.93)).toBeUndefined();
    expect(centreOffset({ unit: "mm", decimals: 3 }, [0, 0], [10.01, 7.77], 0.9)).toBeDefined();
  });
});
