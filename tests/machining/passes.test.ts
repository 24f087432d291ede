import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { passesTo } from "../../src/machining/passes.js";
import { speedsOf } from "../../src/machining/speeds.js";
import { cnc } from "../../src/shop/machines.js";

describe("passes", () => {
  it("goes down in equal steps", () => {
    expect(passesTo(18, 6, false)).toEqual([6, 12, 18]);
    expect(passesTo(18.4, 6, false)).toHaveLength(4);
  });

  it("goes down in one where the bit is as wide as it goes deep, and no wider", () => {
    expect(passesTo(12, 12, false)).toEqual([12]);
    expect(passesTo(12.1, 12, false)).toEqual([6.05, 12.1]);
  });

  it("takes more, shallower passes on a light machine, none under half the bit's width", () => {
    expect(passesTo(18, 12, true)).toEqual([6, 12, 18]);
    expect(passesTo(4, 12, true)).toEqual([4]);
  });

  it("lets a compression bit's first pass take its up-cut part", () => {
    expect(passesTo(18, 6, false, 8)).toEqual([8, 13, 18]);
    expect(passesTo(5, 6, false, 8)).toEqual([5]);
  });

  it("never goes deeper than the bit is wide in one, nor less than half where it goes deeper than that at all", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.boolean(),
        (depth, d, light) => {
          const passes = passesTo(depth, d, light);
          expect(passes.at(-1)).toBe(depth);
          const steps = passes.map((pass, i) => pass - (passes[i - 1] ?? 0));
          for (const step of steps) {
            expect(step).toBeLessThanOrEqual(d * (1 + 1e-9));
            expect(step).toBeGreaterThanOrEqual(Math.min(depth, d / 2) * (1 - 1e-9));
          }
        },
      ),
      { seed: 20310409 },
    );
  });
});

describe("speeds", () => {
  const bit = { kind: "straight", d: 12, flutes: 2 } as const;

  it("lowers the rpm where the machine cannot go as fast as the chip asks", () => {
    const slow = speedsOf({ ...cnc, feed: { least: 200, most: 5000 } }, bit, "MDF");
    const fast = speedsOf({ ...cnc, feed: { least: 200, most: 50_000 } }, bit, "MDF");
    if ("limit" in slow || "limit" in fast) throw new Error("both can turn");
    expect(fast.rpm).toBe(24_000);
    expect(slow.rpm).toBeLessThan(10_000);
    expect(slow.feed).toBeLessThanOrEqual(5000);
    expect(slow.chip / fast.chip).toBeCloseTo(1, 1);
  });

  it("takes half the chip on a machine that bears half of it", () => {
    const [rigid, light] = [1, 0.5].map((share) =>
      speedsOf({ ...cnc, "chip share": share, feed: { least: 1, most: 1e6 } }, bit, "MDF"),
    );
    if ("limit" in rigid! || "limit" in light!) throw new Error("both can turn");
    expect(light!.chip / rigid!.chip).toBeCloseTo(0.5, 3);
  });

  it("says so where the bit's mark lies below the slowest spindle speed, and not where it is just that", () => {
    expect(speedsOf(cnc, { ...bit, "most rpm": 5999 }, "MDF")).toEqual({ limit: 5999, least: 6000 });
    expect(speedsOf(cnc, { ...bit, "most rpm": 6000 }, "MDF")).toHaveProperty("rpm", 6000);
  });
});
