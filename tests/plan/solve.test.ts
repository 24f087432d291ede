import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planJob } from "../../src/plan/plan.js";
import { toy, toyJob, toyLimits, toyShop } from "./toyKind.js";

function settle(pieces: Parameters<typeof toyJob>[0]) {
  const { value, findings } = planJob(toyJob(pieces), toyShop, [toy]);
  return { sizes: Object.fromEntries(value?.sizes ?? []), codes: findings.map((finding) => finding.code) };
}

describe("settling a free size", () => {
  it("takes the step that misses the wanted volume least, for any slope", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        fc.double({ min: 0.15, max: 0.85, noNaN: true }),
        (slope, share) => {
          const wantedL = slope * (toyLimits.min + share * (toyLimits.max - toyLimits.min));
          const { sizes, codes } = settle({ box: { wantedL, litres: (size) => size * slope } });
          expect(codes).toEqual([]);
          // no other step can be nearer
          expect(Math.abs(sizes["box"]! - wantedL / slope)).toBeLessThanOrEqual(toyLimits.step / 2 + 1e-9);
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });

  it("counts what others ask of it at the size it ends with", () => {
    // above 400 mm the leaning piece asks for four things, below for two; each takes a tenth of a litre
    const litres = (size: number, asks: number) => size / 20 - asks / 10;
    const { sizes } = settle({
      box: { wantedL: 20, litres },
      plate: { leans: ["box"], asks: (size) => (size > 400 ? 4 : 2) },
    });
    expect(litres(sizes["box"]!, 4)).toBeCloseTo(20, 9);
    expect(sizes["box"]).toBeCloseTo(408, 9);
  });

  it("settles beside a jump that no size can bridge", () => {
    // at 500 mm two litres vanish: 19 L is reached just before the jump or well after it, never missed by more than a step
    const litres = (size: number) => size / 25 - (size >= 500 ? 2 : 0);
    const { sizes } = settle({ box: { wantedL: 19, litres } });
    expect(Math.abs(litres(sizes["box"]!) - 19)).toBeLessThanOrEqual(0.02);
  });

  it("says which limit binds when the space is too small", () => {
    const { sizes, codes } = settle({ box: { wantedL: 50, litres: (size) => size / 20 } });
    expect(sizes["box"]).toBe(toyLimits.max);
    expect(codes).toEqual(["free-size-binds"]);
  });

  it("says which limit binds when the least is already too much", () => {
    const { sizes, codes } = settle({ box: { wantedL: 1, litres: (size) => size / 20 } });
    expect(sizes["box"]).toBe(toyLimits.min);
    expect(codes).toEqual(["free-size-binds"]);
  });

  it("settles two boxes, one of which leans on the other", () => {
    const { sizes, codes } = settle({
      a: { wantedL: 20, litres: (size) => size / 20 },
      b: { wantedL: 10, litres: (size) => size / 30, leans: ["a"] },
    });
    expect(sizes).toEqual({ a: 400, b: 300 });
    expect(codes).toEqual([]);
  });
});
