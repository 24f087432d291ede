import { describe, expect, it } from "vitest";
import type { Frame, Quaternion } from "../../../src/geometry/frame.js";
import type { Part } from "../../../src/model/part.js";
import { insideClosed } from "../../../src/plan/checks/insideClosed.js";
import { airOf, type BoxSize, boxParts, type FeatureSketch, opening, planOf, type Role, scene } from "./fixture.js";

const size: BoxSize = { width: 433, depth: 371.5, height: 242.3, t: 18.2 };

async function look(parts: readonly Part[], at?: Frame) {
  const { job, shop, plan } = scene(planOf(parts, { air: [airOf(size, parts)] }, at));
  return insideClosed.run(job, shop, plan);
}

/** Turns spread over all directions, from a fixed start (a linear congruence; no chance in it). */
function turns(count: number): readonly Quaternion[] {
  let state = 12345;
  const next = () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state / 2147483648 - 0.5;
  };
  return Array.from({ length: count }, () => {
    const q = [next(), next(), next(), next()] as const;
    const length = Math.hypot(...q);
    return [q[0] / length, q[1] / length, q[2] / length, q[3] / length];
  });
}

describe("the inside of a box", () => {
  it("is closed, however the box is turned", async () => {
    for (const quat of turns(20))
      expect(await look(boxParts(size), { origin: [310.7, -94.1, 55.5], quat })).toEqual([]);
  });

  it("is open with any one panel left out", async () => {
    for (const [index] of boxParts(size).entries()) {
      const [finding, ...others] = await look(boxParts(size).filter((_, i) => i !== index));
      expect(finding?.code).toBe("side-missing");
      expect(others).toEqual([]);
    }
  });

  it("is open where a panel is 0.5 mm short: the panel is named, and by how much", async () => {
    for (const role of ["left", "right"] as const) {
      const [finding] = await look(boxParts(size, {}, { [role]: 0.5 }));
      expect(finding?.code).toBe("joint-gapes");
      expect(finding?.on).toEqual([`box/${role}`]);
      expect(finding?.facts["gap"]).toEqual({ unit: "mm", value: expect.closeTo(0.5, 9) });
    }
  });

  it("is closed by what fills its openings, and leaks through each that nothing fills", async () => {
    const features = (filled: boolean): Partial<Record<Role, readonly FeatureSketch[]>> => ({
      front: [opening("opening.terminal", 200, 100, 60, filled ? "terminal" : undefined)],
      top: [opening("opening.driver", 200, 180, 120, "driver ten"), opening("hole.cable", 60, 60, 12)],
    });
    const found = await look(boxParts(size, features(false)));
    expect(found.map((finding) => finding.on)).toEqual([
      ["box/top", "box/top:hole.cable"],
      ["box/front", "box/front:opening.terminal"],
    ]);
    expect((await look(boxParts(size, features(true)))).map((finding) => finding.on)).toEqual([
      ["box/top", "box/top:hole.cable"],
    ]);
  });
});
