import { describe, expect, it } from "vitest";
import { cheaperChoices } from "../../../src/nest/shapes/choices.js";
import { sheet } from "./orders.js";

const usable = (rows: readonly { readonly length: number; readonly width: number }[]) =>
  rows.map(({ length, width }) => length * width);

describe("cheaper choices of sheets", () => {
  it("are all that hold the parts for less, the roomiest first", () => {
    // two of 1 m2 at 30 are in use; one of 1.8 m2 costs 50, one of 0.5 m2 lies in the rack
    const stock = [sheet(1000, 1000), sheet(1800, 1000, { cost: 50 }), sheet(1000, 500, { cost: 0, count: 1 })];
    const choices = cheaperChoices(stock, usable(stock), 1.4e6, 1, [0, 0]);
    expect(choices).toEqual([[1, 2], [1], [0, 2]]);
    expect(cheaperChoices(stock, usable(stock), 1.6e6, 1, [0, 0])).toEqual([[1, 2], [1]]);
  });

  it("take no more of the rack than there is, and buy no fewer than any layout needs", () => {
    const stock = [sheet(1000, 1000), sheet(1000, 900, { cost: 0, count: 1 })];
    expect(cheaperChoices(stock, usable(stock), 1.5e6, 1, [0, 0])).toEqual([[0, 1]]);
    expect(cheaperChoices(stock, usable(stock), 0.8e6, 0, [0])).toEqual([[1]]);
    expect(cheaperChoices(stock, usable(stock), 0.8e6, 1, [0])).toEqual([]);
  });

  it("are not counted out where the rack holds thirty offcuts, a thousand million choices", () => {
    const offcuts = Array.from({ length: 30 }, (_, i) => sheet(400 + i, 300, { cost: 0, count: 1 }));
    const stock = [...offcuts, sheet(2440, 1220)];
    const now = [...offcuts.keys(), 30];
    const choices = cheaperChoices(stock, usable(stock), 4e6, 0, now);
    expect(choices.length).toBeGreaterThan(0);
    expect(choices.length).toBeLessThan(20_000);
    expect(choices).toContainEqual(
      now
        .slice(0, -1)
        .filter((row) => row >= 0)
        .concat(30)
        .slice(1),
    );
  });
});
