import { describe, expect, it } from "vitest";
import { slotPortL } from "../../src/acoustics/slotPort.js";

describe("a slot port", () => {
  it("takes its air and the panels that only it needs", () => {
    const panels = [{ length: 400, width: 300, thickness: 18 }];
    expect(slotPortL({ width: 300, height: 50, length: 400, panels })).toBeCloseTo(6 + 2.16, 12);
    expect(slotPortL({ width: 300, height: 50, length: 400, panels: [] })).toBeCloseTo(6, 12);
  });

  it("round a square bend holds the two rectangles of its L", () => {
    // legs 300 and 200 along the outside, 50 high: 300 x 50 and (200 - 50) x 50
    const middle = 300 - 25 + (200 - 25);
    const litres = slotPortL({ width: 250, height: 50, length: middle, panels: [] });
    expect(litres).toBeCloseTo(((300 * 50 + 150 * 50) * 250) / 1e6, 12);
  });
});
