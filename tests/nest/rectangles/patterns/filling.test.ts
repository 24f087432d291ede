import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  countsOf,
  type Filling,
  fillingOf,
  mostOf,
  valuesOf,
} from "../../../../src/nest/rectangles/patterns/filling.js";
import { type Grid, gridOf } from "../../../../src/nest/rectangles/patterns/grid.js";
import type { Kind, Size } from "../../../../src/nest/rectangles/patterns/kind.js";
import { kindOf, mostByEveryCut } from "./everyCut.js";

const areasOf = (kinds: readonly Kind[]) => kinds.map(({ lies }) => lies[0]!.w * lies[0]!.h);

function bestOf(grid: Grid | undefined, worths: readonly number[]): { most: number; filling: Filling | undefined } {
  const values = valuesOf(grid!, worths);
  return { most: mostOf(values), filling: fillingOf(grid!, worths, values) };
}

/** What a filling takes, from its blanks up. */
function sizeOf(filling: Filling, kinds: readonly Kind[]): Size {
  if ("kind" in filling) return kinds[filling.kind]!.lies[filling.lie]!;
  const [one, other] = [sizeOf(filling.one, kinds), sizeOf(filling.other, kinds)];
  return filling.across
    ? { w: one.w + other.w, h: Math.max(one.h, other.h) }
    : { w: Math.max(one.w, other.w), h: one.h + other.h };
}

const order = (side: fc.Arbitrary<number>, sheet: fc.Arbitrary<number>) =>
  fc.record({
    sizes: fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 40 })), { minLength: 1, maxLength: 5 }),
    w: sheet,
    h: sheet,
    turns: fc.boolean(),
  });

describe("the best filling of a sheet", () => {
  it("is worth as much as the best of every way to cut it", () => {
    const small = order(fc.integer({ min: 2, max: 20 }), fc.integer({ min: 20, max: 45 }));
    fc.assert(
      fc.property(small, ({ sizes, w, h, turns }) => {
        const kinds = sizes.map(([a, b]) => kindOf(a, b, 1, turns));
        const worths = sizes.map(([a, b, more]) => a * b + more);
        const grid = gridOf(kinds, { w, h }, 1e9, "cuttable");
        expect(grid?.isExact).toBe(true);
        const { most, filling } = bestOf(grid, worths);
        expect(most).toBeCloseTo(mostByEveryCut(kinds, worths, { w, h }), 6);
        const counts = countsOf(filling!, kinds.length);
        expect(counts.reduce((sum, count, kind) => sum + count * worths[kind]!, 0)).toBeCloseTo(most, 6);
        const size = sizeOf(filling!, kinds);
        expect(size.w).toBeLessThanOrEqual(w);
        expect(size.h).toBeLessThanOrEqual(h);
      }),
      { seed: 20310411, numRuns: 150 },
    );
  });

  it("lies between what grids with fewer lengths are sure of", () => {
    const large = order(fc.integer({ min: 16, max: 60 }), fc.integer({ min: 130, max: 180 }));
    let coarse = 0;
    fc.assert(
      fc.property(large, ({ sizes, w, h, turns }) => {
        const kinds = sizes.map(([a, b]) => kindOf(a, b, 1, turns));
        const worths = areasOf(kinds);
        const exact = mostByEveryCut(kinds, worths, { w, h });
        for (const work of [300, 3_000]) {
          const [sure, over] = (["cuttable", "over"] as const).map((way) => gridOf(kinds, { w, h }, work, way));
          if (!sure || !over) continue;
          if (!sure.isExact) coarse++;
          const { most, filling } = bestOf(sure, worths);
          expect(most).toBeLessThanOrEqual(exact + 1e-6);
          expect(sizeOf(filling!, kinds).w).toBeLessThanOrEqual(w);
          expect(sizeOf(filling!, kinds).h).toBeLessThanOrEqual(h);
          expect(mostOf(valuesOf(over, worths))).toBeGreaterThanOrEqual(exact - 1e-6);
        }
      }),
      { seed: 20310412, numRuns: 20 },
    );
    expect(coarse).toBeGreaterThan(5);
  });

  it("is found where sizes have no measure in common", () => {
    // a hair less than a third of 100: three lie beside one another; a hair more, and a third does not
    const third = 100 / 3;
    const grid = gridOf([kindOf(third - 0.01, 50)], { w: 100, h: 100 }, 1e9, "cuttable");
    expect(grid?.isExact).toBe(false);
    expect(bestOf(grid, [1]).most).toBe(6);
    const over = gridOf([kindOf(third + 0.01, 50)], { w: 100, h: 100 }, 1e9, "over");
    expect(mostOf(valuesOf(over!, [1]))).toBe(4);
  });

  it("takes a kerf once between blanks, and none at the edges", () => {
    // by hand: 5 x 400 and 4 cuts of 3.2 are 2012.8; 3 x 400 and 2 cuts are 1206.4
    const kerf = 3.2;
    const kinds = [kindOf(400 + kerf, 400 + kerf)];
    const whole = (w: number, h: number) => gridOf(kinds, { w: w + kerf, h: h + kerf }, 1e9, "cuttable");
    expect(bestOf(whole(2012.8, 1206.4), [1]).most).toBe(15);
    expect(bestOf(whole(2012.7, 1206.4), [1]).most).toBe(12);
  });

  it("uses what is as long as the sheet, where that is all it needs", () => {
    const { lies, wanted } = kindOf(101, 20);
    const shortened = { wanted, lies: [{ ...lies[0]!, least: { w: 99, h: 20 } }] };
    expect(bestOf(gridOf([shortened], { w: 100, h: 100 }, 1e9, "cuttable"), [1]).most).toBe(5);
    expect(gridOf([kindOf(101, 20)], { w: 100, h: 100 }, 1e9, "cuttable")).toBeUndefined();
  });

  it("is not looked for among pieces far too small for the sheet", () => {
    const crumbs = [kindOf(7, 11), kindOf(13, 9.5)];
    expect(gridOf(crumbs, { w: 2440, h: 1220 }, 1_000, "cuttable")).toBeUndefined();
  });
});
