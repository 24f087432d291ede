import { describe, expect, it } from "vitest";
import { massKg } from "../../src/drawing/mass.js";
import { partNamed, planned } from "../pieces/planned.js";

// 750 kg/m3: the usual figure for MDF (common practice, no source; inside the published range of 600 to 880).
describe("the mass of a part", () => {
  const job = planned();
  const kg = (id: string) => massKg(partNamed(job, id), job.job, job.shop)!;

  it("is area times thickness times density", () => {
    // holes of 4.5 mm take less than a hundredth
    expect(kg("box/bottom")).toBeCloseTo(0.5315 * 0.42 * 0.0182 * 750, 1);
  });

  it("takes off a recess only where there is board", () => {
    const ring = (Math.PI / 4) * (0.31 ** 2 - 0.233 ** 2) * 0.0182;
    const recess = (Math.PI / 4) * (0.263 ** 2 - 0.233 ** 2) * 0.007;
    expect(kg("ring/ring")).toBeCloseTo((ring - recess) * 750, 2);
  });
});
