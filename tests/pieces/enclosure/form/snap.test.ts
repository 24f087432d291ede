import { describe, expect, it } from "vitest";
import { extentsOf } from "../../../../src/geometry/measure.js";
import type { Part } from "../../../../src/model/part.js";
import { starterShop } from "../../../../src/shop/starter.js";
import { type BoxSpec, planBox } from "../../../property/boxes.js";

const { step } = starterShop().saw;
const sawn = (spec: BoxSpec) =>
  planBox({ kind: "enclosure", board: "thick", "cut by": "saw", stands: { x: 10, y: 10 }, ...spec });
const at = (...places: readonly (readonly [number, number])[]) => places.map((place) => ({ at: place }));
/** What is cut first, across and up. */
const sizesOf = (part: Part) => {
  const { min, max } = extentsOf(part.blank.outer);
  return [max.x - min.x, max.y - min.y] as const;
};
const offStep = (size: number) => Math.abs(size / step - Math.round(size / step)) * step;

describe("the sizes of a sawn box", () => {
  it("are whole steps of the saw on every panel of a raked box that leans on one side", () => {
    const { plan } = sawn({
      outside: {
        side: [
          { at: [0, 0], side: "bottom" },
          { at: [301.3, 0], side: "rake" },
          { at: [199.9, 400.2], side: "top" },
          { at: [0, 400.2], side: "back" },
        ],
        width: 600.3,
      },
    });
    for (const part of plan.built.parts) {
      for (const size of sizesOf(part)) expect(offStep(size), part.role).toBeLessThan(1e-6);
    }
  });

  it("are whole steps on every panel of a stepped box that is rebated, where the step leaves one size over", () => {
    const { plan } = sawn({
      outside: { side: at([0, 150], [220, 150], [220, 0], [540, 0], [540, 330], [0, 330]), width: 400 },
      joints: { form: "rebate", deep: 6 },
    });
    const walls = plan.built.parts.filter(({ role }) => role !== "left" && role !== "right");
    expect(walls).toHaveLength(6);
    for (const part of walls) for (const size of sizesOf(part)) expect(offStep(size), part.role).toBeLessThan(1e-6);
  });

  it("agree where walls are of one height, and the volume is that of the sizes as sawn", () => {
    const { plan } = sawn({ outside: { width: 500.2, depth: 420.3, height: 300.4 } });
    const size = (role: string) => sizesOf(plan.built.parts.find((part) => part.role === role)!);
    const [, high] = size("front");
    for (const role of ["rear", "left", "right"]) expect(size(role)[1]).toBeCloseTo(high, 9);
    const inside = ((size("front")[0] - 36.4) * size("left")[0] * high) / 1e6;
    expect(plan.built.air[0]!.terms[0]!.litres).toBeCloseTo(inside, 9);
  });

  it("stay as typed where a CNC cuts them", () => {
    const { plan } = sawn({ outside: { width: 500.2, depth: 420.3, height: 300.4 }, "cut by": "cnc" });
    expect(sizesOf(plan.built.parts.find((part) => part.role === "top")!)).toEqual([500.2, 420.3]);
  });
});
