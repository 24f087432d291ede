import { describe, expect, it } from "vitest";
import { chipLoad, chipLoads, depthShare } from "../../src/machining/chipLoad.js";
import { fastest, feedOf } from "../../src/machining/speeds.js";

const inch = 25.4;

describe("feeds as published", () => {
  it("makes 3600 mm/min of 18000 rpm, 2 flutes and 0.1 mm (cncshop.eu, feeds and speeds)", () => {
    expect(feedOf(18_000, 2, 0.1)).toBe(3600);
  });

  it("takes .015 in of a chip load of .020 in where a 1/2 in bit goes 1 in deep (asttooling.com, speeds and feeds)", () => {
    expect(0.02 * depthShare(1 * inch, inch / 2)).toBeCloseTo(0.015, 12);
  });

  it("takes a quarter off at two diameters and half at three, nothing at one (asttooling.com)", () => {
    expect([1, 2, 3].map((times) => depthShare(times * 12, 12))).toEqual([1, 0.75, 0.5]);
    expect(depthShare(6, 12)).toBe(1);
  });

  it.each([
    ["MDF", 1 / 8, 0.004, 0.007],
    ["MDF", 1 / 4, 0.012, 0.015],
    ["MDF", 3 / 8, 0.017, 0.019],
    ["MDF", 1 / 2, 0.02, 0.025],
    ["birch plywood", 1 / 8, 0.003, 0.005],
    ["birch plywood", 1 / 4, 0.006, 0.009],
    ["birch plywood", 3 / 8, 0.015, 0.018],
    ["birch plywood", 1 / 2, 0.018, 0.021],
    ["oak", 1 / 4, 0.005, 0.007],
    ["pine", 1 / 2, 0.019, 0.021],
  ])("stays in the chart's band for %s and a bit of %d in (asttooling.com)", (material, d, least, most) => {
    const chip = chipLoad(material, d * inch) / inch;
    expect(chip).toBeGreaterThanOrEqual(least);
    expect(chip).toBeLessThanOrEqual(most);
  });

  it("grows with the diameter all along the chart", () => {
    const chips = Array.from({ length: 120 }, (_, i) => chipLoad("MDF", 0.1 + i * 0.15));
    for (const [i, chip] of chips.entries()) if (i > 0) expect(chip).toBeGreaterThanOrEqual(chips[i - 1]!);
    expect(chipLoads.length).toBe(4);
  });

  it("turns wide bits more slowly: 1 in 24000, 2 in 18000, 2 1/2 in 16000, wider 12000; the bit's own mark wins (common practice, no source)", () => {
    const rpm = (d: number) => fastest({ kind: "straight", d: d * inch });
    expect([1, 1.001, 2, 2.4, 2.6].map(rpm)).toEqual([24_000, 18_000, 18_000, 16_000, 12_000]);
    expect(fastest({ kind: "straight", d: 6, "most rpm": 30_000 })).toBe(30_000);
    expect(fastest({ kind: "straight", d: 6, "most rpm": 9000 })).toBe(9000);
  });
});
