import { describe, expect, it } from "vitest";
import { emptySheet } from "../../../../src/nest/rectangles/cutTree.js";
import type { Found } from "../../../../src/nest/rectangles/pool/found.js";
import { priced } from "../../../../src/nest/rectangles/pool/prices.js";

const found = (...kinds: number[]): Found => ({
  tree: emptySheet(1, 1),
  kinds,
});

describe("prices of kinds", () => {
  it("come to one sheet and a half where every two of three lie together, but not all three", () => {
    // worked by hand: half a sheet each; each of the three is then worth one sheet, and taken half
    const { each, sheets } = priced([found(0, 1), found(1, 2), found(0, 2)], [1, 1, 1], [1, 0, 0], 2);
    expect(sheets).toBeLessThanOrEqual(1.5 + 1e-9);
    expect(sheets).toBeGreaterThan(1.45);
    for (const price of each) expect(price).toBeCloseTo(0.5, 1);
  });

  it("put a whole sheet on what lies on one alone, and nothing on what always finds room", () => {
    // worked by hand: the large one needs a sheet each time, and the two small ones always lie beside it
    const { each, sheets } = priced([found(0, 1, 1)], [3, 6], [0.5, 0.25], 4);
    expect(sheets).toBeCloseTo(3, 1);
    expect(each[0]! + 2 * each[1]!).toBeCloseTo(1, 1);
  });

  it("are never more in all than the sheets that do", () => {
    const kinds = Array.from({ length: 8 }, (_, kind) => kind);
    const finds = kinds.flatMap((a) => kinds.filter((b) => b > a).map((b) => found(a, b)));
    const { sheets } = priced(
      finds,
      kinds.map(() => 1),
      kinds.map((kind) => kind / 8),
      5,
    );
    // four sheets of two each do
    expect(sheets).toBeLessThanOrEqual(4 + 1e-9);
    expect(sheets).toBeGreaterThan(3.9);
  });
});
