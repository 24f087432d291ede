import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundOf } from "../../src/nest/bound.js";
import { asItIs, type DualFeasible, halves, rounded, steps } from "../../src/nest/dualFeasible.js";
import type { NestOrder } from "../../src/nest/engine.js";
import { nestRectangles } from "../../src/nest/rectangles/search.js";
import { plain } from "../property/nestOrders.js";

const share = fc.integer({ min: 1, max: 1000 }).map((n) => n / 1000);
const weighings: fc.Arbitrary<DualFeasible> = fc.oneof(
  fc.constant(asItIs),
  fc.integer({ min: 1, max: 500 }).map((n) => rounded(n / 1000)),
  fc.integer({ min: 1, max: 500 }).map((n) => halves(n / 1000)),
  fc.integer({ min: 1, max: 20 }).map(steps),
);

describe("a dual feasible function", () => {
  it("weighs what fits into one side no more than 1 together", () => {
    fc.assert(
      fc.property(weighings, fc.array(share, { minLength: 1, maxLength: 12 }), (weigh, shares) => {
        const beside: number[] = [];
        for (const each of shares) if (beside.reduce((sum, one) => sum + one, each) <= 1 + 1e-12) beside.push(each);
        const weight = beside.reduce((sum, each) => sum + weigh(each - 1e-12), 0);
        expect(weight).toBeLessThanOrEqual(1 + 1e-6);
      }),
      { seed: 20310409, numRuns: 3000 },
    );
  });

  it("says of pieces a little over a third that no more than two lie beside one another", () => {
    // as lengths three of them take 1.02 of a side; by whole parts of three each counts as a half
    expect(3 * steps(2)(0.34)).toBe(1.5);
    // and 0.7 leaves no room for 0.31, which counts as nothing then
    expect(rounded(0.3001)(0.7)).toBe(1);
    expect(rounded(0.3001)(0.3)).toBe(0);
  });
});

const orderOf = (
  sizes: readonly (readonly [number, number])[],
  sheet: readonly [number, number],
  turned = false,
): NestOrder => ({
  items: sizes.map(([w, h], i) => ({
    id: `${i}`,
    shape: plain(w, h),
    gap: 0,
    turns: turned ? [0, Math.PI / 2] : [0],
  })),
  stock: [{ name: "sheet", length: sheet[0], width: sheet[1], trim: 0, cost: 1 }],
  edgeToEdge: true,
  seed: 1,
  iterations: 120,
});

describe("the bound", () => {
  it("counts what is too narrow beside a blank for any other: nine of 40 by 40 on sheets of 100 need three", () => {
    const nine = Array.from({ length: 9 }, () => [40, 40] as const);
    // by area 9 x 1600 is 1.44 sheets; two lie beside one another, four on a sheet
    expect(boundOf(orderOf(nine, [100, 100]))).toMatchObject({ count: 3, why: expect.stringContaining("too narrow") });
  });

  it("holds for blanks that may be turned, on square sheets and on others", () => {
    // 60 by 30, three across the one way and one across the other
    const many = Array.from({ length: 8 }, () => [60, 35] as const);
    const square = boundOf(orderOf(many, [100, 100], true)).count;
    const long = boundOf(orderOf(many, [110, 100], true)).count;
    for (const [bound, sheet] of [
      [square, [100, 100]],
      [long, [110, 100]],
    ] as const)
      expect(bound).toBeLessThanOrEqual(nestRectangles(orderOf(many, sheet, true)).sheets.length);
    expect(square).toBeGreaterThanOrEqual(2);
  });

  it("is never above what can be laid", () => {
    const side = fc.integer({ min: 5, max: 100 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 12 }),
        fc.boolean(),
        side,
        (sizes, turned, more) => {
          const order = orderOf(sizes, [100, 100 + (more % 3) * 20], turned);
          expect(boundOf(order).count).toBeLessThanOrEqual(nestRectangles(order).sheets.length);
        },
      ),
      { seed: 20310409, numRuns: 150 },
    );
  });
});
