import { describe, expect, it } from "vitest";
import { causesOf, spreadOf } from "../../src/acoustics/spread.js";

/** Air in a box by its outside, the boards' thickness and how far each size across and along was cut off. */
function litres(t: number, section = 0, length = 0): number {
  return ((420 + section - 2 * t) * (150 + section - 2 * t) * (600 + length - 2 * t)) / 1e6;
}

const t = 18;
const inside = { area: 384 * 114, perimeter: 2 * (384 + 114), length: 564 };
const walls = [{ board: "box", area: inside.perimeter * 564 + 2 * inside.area, tolerance: 0.125 }];
const causes = causesOf(inside, walls, 0.5);

describe("the spread of a volume", () => {
  const slope = (f: (d: number) => number) => (f(1e-4) - f(-1e-4)) / 2e-4;

  it("comes of the slopes of the box itself", () => {
    const [thickness, section, length] = causes;
    expect(thickness?.litresPerMm).toBeCloseTo(
      slope((d) => litres(t + d)),
      7,
    );
    expect(section?.litresPerMm).toBeCloseTo(
      slope((d) => litres(t, d)),
      7,
    );
    expect(length?.litresPerMm).toBeCloseTo(
      slope((d) => litres(t, 0, d)),
      7,
    );
  });

  it("holds the box that is worst in all of them, to first order", () => {
    const { worst } = spreadOf(causes);
    const most = litres(t - 0.125, 0.5, 0.5) - litres(t);
    const least = litres(t) - litres(t + 0.125, -0.5, -0.5);
    expect(worst).toBeCloseTo((most + least) / 2, 4);
  });

  it("is likely less than the worst, but no less than any one cause", () => {
    const { worst, likely } = spreadOf(causes);
    expect(likely).toBeLessThan(worst);
    for (const { litresPerMm, tolerance } of causes) {
      expect(likely).toBeGreaterThan(Math.abs(litresPerMm) * tolerance);
    }
  });

  it("of causes 3, 4 and 12 is 19 at worst and 13 likely; of none, none", () => {
    const causes = [3, -4, 12].map((litresPerMm) => ({ what: "any", litresPerMm, tolerance: 1 }));
    expect(spreadOf(causes)).toEqual({ worst: 19, likely: 13 });
    expect(spreadOf([])).toEqual({ worst: 0, likely: 0 });
  });
});
