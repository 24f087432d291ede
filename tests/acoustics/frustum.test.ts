import { describe, expect, it } from "vitest";
import { frustumL } from "../../src/acoustics/frustum.js";

describe("a frustum", () => {
  it("with equal ends is a cylinder, with a pointed end a third of it", () => {
    expect(frustumL(200, 200, 70)).toBeCloseTo((Math.PI * 100 ** 2 * 70) / 1e6, 12);
    expect(frustumL(200, 0, 70)).toBeCloseTo((Math.PI * 100 ** 2 * 70) / 3 / 1e6, 12);
  });

  it("does not care which end is named first, and is its two halves", () => {
    expect(frustumL(240, 100, 80)).toBeCloseTo(frustumL(100, 240, 80), 12);
    expect(frustumL(240, 100, 80)).toBeCloseTo(frustumL(240, 170, 40) + frustumL(170, 100, 40), 12);
  });
});
