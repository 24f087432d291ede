import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Quaternion } from "../../src/geometry/frame.js";
import { loadSolids } from "../../src/geometry/solids.js";
import { separation } from "../../src/geometry/solids-apart.js";
import { insideClosed } from "../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../src/plan/checks/netVolume.js";
import { airOf, boxParts, planOf, scene } from "../plan/checks/fixture.js";

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const turn = fc
  .tuple(length(-1, 1), length(-1, 1), length(-1, 1), length(-1, 1))
  .filter((q) => Math.hypot(...q) > 0.1)
  .map((q): Quaternion => {
    const size = Math.hypot(...q);
    return [q[0] / size, q[1] / size, q[2] / size, q[3] / size];
  });
const frame = fc.record({ origin: fc.tuple(length(-900, 900), length(-900, 900), length(0, 900)), quat: turn });

describe("boxes of any size, anywhere, turned anyhow", () => {
  it("are closed, and hold what the formula says to a millionth", async () => {
    const box = fc.record({
      width: length(120, 1200),
      depth: length(120, 900),
      height: length(90, 600),
      t: length(12, 25.4),
    });
    await fc.assert(
      fc.asyncProperty(box, frame, async (size, at) => {
        const parts = boxParts(size);
        const { job, shop, plan } = scene(planOf(parts, { air: [airOf(size, parts)] }, at));
        expect(await insideClosed.run(job, shop, plan)).toEqual([]);
        expect(await netVolume.run(job, shop, plan)).toEqual([]);
      }),
      { numRuns: 50, seed: 7 },
    );
  });
});

describe("two blocks", () => {
  it("stand apart by the fifteen axes if and only if their solids share nothing", async () => {
    const solids = await loadSolids();
    const block = fc
      .tuple(length(5, 60), length(5, 60), length(5, 60))
      .map((max) => ({ min: [0, 0, 0], max }) as const);
    const near = fc.record({ origin: fc.tuple(length(-60, 60), length(-60, 60), length(-60, 60)), quat: turn });
    fc.assert(
      fc.property(block, near, block, near, (one, at, other, where) => {
        const gap = separation({ block: one, at }, { block: other, at: where });
        fc.pre(Math.abs(gap) > 1e-6);
        const shared = solids.within(() =>
          solids.volumeOf(solids.intersection(solids.box(one, at), solids.box(other, where))),
        );
        expect(shared > 0).toBe(gap < 0);
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});
