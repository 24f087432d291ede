import { describe, expect, it } from "vitest";
import { circle } from "../../src/geometry/shapes.js";
import type { Shop } from "../../src/model/shop.js";
import { bits } from "../../src/shop/bits.js";
import { bushes } from "../../src/shop/bushes.js";
import { panel, processFor } from "../process/benchParts.js";

const inch = 25.4;
const disc = panel([], { profile: { outer: circle({ x: 0, y: 0 }, 150, "edge"), holes: [] } });

/** The offset of the only bush round the only bit. */
function offsetOf(bush: number, bit: number): number {
  const shop: Partial<Shop> = {
    bits: { bit: { kind: "straight", d: bit, "cutting length": 40 } },
    bushes: { bush: { d: bush, bore: bush - 1, stands: 8 } },
  };
  return processFor(disc, "hand", shop).hand.profiles[0]!.templates[0]!.offset;
}

describe("the offset of a guide bush is half of bush less bit", () => {
  it("a 1 in bush with a 1/2 in bit: 1/4 in (worked example, routerforums.com)", () => {
    expect(offsetOf(inch, inch / 2)).toBe(inch / 4);
  });

  it("a 15 mm bush with a 9 mm bit: 3 mm (worked example, ukworkshop.co.uk)", () => {
    expect(offsetOf(15, 9)).toBe(3);
  });
});

// The sizes in which router tools are sold: common practice, no source.
describe("the built-in router tools", () => {
  const widths = (kind: string) =>
    Object.values(bits)
      .filter((bit) => bit.kind === kind)
      .map(({ d }) => d);

  it("have straight bits in the sizes that are sold", () => {
    for (const d of [3, 4, 5, 6, 8, 10, 12, 16, 20, inch / 8, (3 * inch) / 16, inch / 4, (3 * inch) / 8, inch / 2])
      expect(widths("straight")).toContain(d);
  });

  it("have guide bushes in the outside diameters that are sold, each with a wall", () => {
    const sold = [
      10,
      12,
      16,
      17,
      20,
      24,
      27,
      30,
      40,
      ...[5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4, 51 / 64, 1].map((d) => d * inch),
    ];
    expect(Object.values(bushes).map(({ d }) => d)).toEqual(sold);
    for (const { d, bore } of Object.values(bushes)) expect(d - bore).toBeGreaterThan(1);
  });

  it("have flush-trim bits whose bearing is as wide as they are, so that their offset is none", () => {
    for (const bit of Object.values(bits).filter(({ kind }) => kind === "flush trim")) expect(bit.bearing).toBe(bit.d);
  });

  it("fit the collets that are sold: 1/4, 3/8 and 1/2 in, 6, 8 and 12 mm shanks", () => {
    const shanks = [6, 8, 12, inch / 4, (3 * inch) / 8, inch / 2];
    for (const { shank } of Object.values(bits)) if (shank !== undefined) expect(shanks).toContain(shank);
  });
});
