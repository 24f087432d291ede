import { describe, expect, it } from "vitest";
import { couponOf, measuredDiameter } from "../../src/machining/coupon.js";
import { starterShop } from "../../src/shop/starter.js";

const { value: coupon } = couponOf(starterShop(), "6 straight");
const moves = coupon!.program.setups[0]!.runs[0]!.operations.flatMap((operation) => operation.moves);

/** What a bit that is really this wide leaves: the program knows only the label. */
const cutBy = (d: number) => ({ slot: d, disc: 50 - (d - 6), hole: 50 + (d - 6) });

describe("the test piece", () => {
  it("tells a bit's true diameter from the slot, the disc, the hole, and from all three", () => {
    const read = cutBy(5.87);
    for (const one of [{ slot: read.slot }, { disc: read.disc }, { hole: read.hole }, read]) {
      expect(measuredDiameter(coupon!, one)).toBeCloseTo(5.87, 9);
    }
    expect(measuredDiameter(coupon!, {})).toBeUndefined();
  });

  it("is cut for the diameter on the label, whatever was measured before", () => {
    const shop = starterShop();
    const bits = { ...shop.bits, "6 straight": { ...shop.bits["6 straight"]!, measured: 5.8 } };
    expect(couponOf({ ...shop, bits }, "6 straight").value!.program).toEqual(coupon!.program);
  });

  it("goes round the disc at half the bit from it, and stays half the bit inside the hole", () => {
    const cut = moves.filter(({ to, role }) => to[2] === -5 && (role === "cut" || role === "entry"));
    const from = (x: number) => cut.map(({ to }) => Math.hypot(to[0] - x, to[1] - 50));
    const disc = from(175).filter((r) => r < 40);
    expect(disc.length).toBeGreaterThan(0);
    for (const r of disc) expect(r).toBeCloseTo(28, 6);
    expect(Math.max(...from(85).filter((r) => r < 40))).toBeCloseTo(22, 6);
  });

  it("goes through nowhere", () => {
    expect(Math.min(...moves.map(({ to }) => to[2]))).toBe(-5);
  });
});
