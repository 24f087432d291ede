import { describe, expect, it } from "vitest";
import { aloneWith, type Column, leastCover } from "../../../../src/nest/rectangles/patterns/cover.js";

const column = (cost: number, ...gives: number[]): Column => ({ cost, gives });

describe("the least cover", () => {
  it("mixes columns in parts: by hand, two of each need for four thirds", () => {
    // x of (2, 1) and y of (1, 2): 2x + y = 2 and x + 2y = 2 are met by two thirds of each
    const columns = [column(1, 2, 0), column(1, 0, 2), column(1, 2, 1), column(1, 1, 2)];
    const { cost, amounts, prices } = leastCover(columns, [2, 2], aloneWith(columns.slice(0, 2), 0));
    expect(cost).toBeCloseTo(4 / 3, 9);
    expect(amounts.map((amount) => Number(amount.toFixed(9)))).toEqual([0, 0, 0.666666667, 0.666666667]);
    expect(prices.map((price) => Number(price.toFixed(9)))).toEqual([0.333333333, 0.333333333]);
  });

  it("gives more than is needed where that costs less", () => {
    // by hand: 3 of (1, 1) at 1 give the one need three times though it is wanted twice
    const columns = [column(1, 1, 0), column(1, 0, 1), column(1, 1, 1)];
    const { cost, amounts, prices } = leastCover(columns, [2, 3], aloneWith(columns.slice(0, 2), 0));
    expect(cost).toBeCloseTo(3, 9);
    expect(amounts[2]! + amounts[1]!).toBeCloseTo(3, 9);
    expect(2 * prices[0]! + 3 * prices[1]!).toBeCloseTo(3, 9);
  });

  it("takes no more than there are of what costs nothing", () => {
    // by hand: 10 wanted, 3 sheets at hand give 2 each, 4 are bought singly
    const columns = [column(1, 1, 0), column(0, 2, -1)];
    const { cost, amounts } = leastCover(columns, [10, -3], aloneWith(columns.slice(0, 1), 1));
    expect(cost).toBeCloseTo(4, 9);
    expect(amounts[1]).toBeCloseTo(3, 9);
  });

  it("goes on from fewer columns to the same as from none", () => {
    const columns = [
      column(3, 4, 0, 0),
      column(3, 0, 3, 0),
      column(3, 0, 0, 5),
      column(3, 2, 1, 0),
      column(3, 2, 1, 2),
    ];
    const needs = [17, 11, 13];
    const alone = aloneWith(columns.slice(0, 3), 0);
    const few = leastCover(columns.slice(0, 4), needs, alone);
    const all = leastCover(columns, needs, few.basis);
    expect(all.cost).toBeCloseTo(leastCover(columns, needs, alone).cost, 9);
    expect(all.cost).toBeLessThan(few.cost);
    // its prices prove it: no column is worth more than it costs, and all needs together are worth what they cost
    for (const { cost, gives } of columns)
      expect(gives.reduce((sum, give, i) => sum + give * all.prices[i]!, 0)).toBeLessThanOrEqual(cost + 1e-9);
    expect(needs.reduce((sum, need, i) => sum + need * all.prices[i]!, 0)).toBeCloseTo(all.cost, 9);
  });

  it("comes to an end where many columns meet the needs alike", () => {
    const columns = Array.from({ length: 6 }, (_, i) =>
      column(1, ...Array.from({ length: 6 }, (_, j) => (i === j ? 1 : 0))),
    );
    for (let i = 0; i < 64; i++) columns.push(column(1, ...Array.from({ length: 6 }, (_, j) => (i >> j) & 1)));
    expect(leastCover(columns, [1, 1, 1, 1, 1, 1], aloneWith(columns.slice(0, 6), 0)).cost).toBeCloseTo(1, 9);
  });
});
