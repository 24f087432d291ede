import { describe, expect, it } from "vitest";
import { extentsOf } from "../../src/geometry/measure.js";
import type { Profile } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { boardId } from "../../src/model/ids.js";
import type { Cnc, Offcut } from "../../src/model/shop.js";
import { nestParts } from "../../src/nest/nest.js";
import { sawnRow } from "../../src/nest/sawnRow.js";
import { stockFor } from "../../src/nest/stockFor.js";
import { blankPart, board, orderOf, plain } from "../property/nestOrders.js";

/** 900 x 600, a slant from 900, 250 to 400, 600. */
const outline: Profile = polygon(
  [
    { x: 0, y: 0 },
    { x: 900, y: 0 },
    { x: 900, y: 250 },
    { x: 400, y: 600 },
    { x: 0, y: 600 },
  ],
  (i) => `side.${i + 1}`,
);
const odd: Offcut = { name: "B", length: 900, width: 600, trim: 0, outline, "true edge": "side.1" };
const order = (offcut: Offcut, grain = false, length = 500) =>
  orderOf([blankPart("a", "one", plain(length, 200))], { one: board({ grain, offcuts: [offcut] }) }, () => ({
    method: "saw",
    gap: 3.2,
  }));
const rows = (offcut: Offcut, byMachine: boolean, cnc: Partial<Cnc> = {}, registered = false, grain = false) => {
  const { job, shop } = order(offcut, grain);
  const registration = registered
    ? [{ board: boardId("one"), d: 8, into: 10, fromEnds: [15, 25] as const, keepOff: 10 }]
    : [];
  const stocked = { ...shop, cnc: { ...shop.cnc!, ...cnc } };
  return stockFor(job, stocked, { board: boardId("one"), byMachine }, { registration }, []);
};

describe("the stock for the saw", () => {
  it("has an odd offcut as the largest rectangle on its true edge, and says where in it that lies", () => {
    const { rows: found, findings } = rows(odd, false);
    expect(findings).toEqual([]);
    expect(found).toHaveLength(1);
    // under the slant y = 250 + 0.7 (900 - x) the whole height at x = 400: 400 x 600 is more than 900 x 250 and all between
    expect(found[0]).toMatchObject({ name: "offcut B", within: { side: "side.1", y: 0 } });
    expect(found[0]!.outline).toBeUndefined();
    const { length, width } = found[0]!;
    const under = (x: number) => x * Math.min(600, 250 + 0.7 * (900 - x));
    const most = Math.max(...Array.from({ length: 901 }, (_, x) => under(x)));
    // as the fence is set in halves, it is up to one of these shorter and narrower
    expect(length * width).toBeGreaterThanOrEqual(most - 0.5 * (length + width));
    expect([length, width].map((side) => (2 * side) % 1)).toEqual([0, 0]);
    expect(width).toBeLessThanOrEqual(250 + 0.7 * (900 - length) + 1e-6);
  });

  it("goes on to the layout, whose sheet tells it", () => {
    const { job, shop, plan, process } = order(odd);
    const { value } = nestParts(job, shop, plan, process, { seed: 1, iterations: 20 });
    expect(value!.sheets.map(({ offcut, within }) => [offcut, within?.side])).toEqual([["B", "side.1"]]);
    expect(value!.left).toEqual([]);
    // longer than the rectangle is, though not than the offcut
    const long = order(odd, false, 890);
    expect(
      nestParts(long.job, long.shop, long.plan, long.process, { seed: 1, iterations: 20 }).value!.left,
    ).toHaveLength(1);
  });

  it("leaves an offcut alone that has no true edge, or none along the grain", () => {
    const { "true edge": _, ...unnamed } = odd;
    expect(rows(unnamed, false)).toMatchObject({ rows: [], findings: [{ code: "offcut-not-for-saw" }] });
    const upright = { ...odd, "true edge": "side.5" };
    expect(rows(upright, false).rows).toHaveLength(1);
    expect(rows(upright, false, {}, false, true)).toMatchObject({
      rows: [],
      findings: [{ code: "offcut-not-for-saw" }],
    });
  });

  it("leaves an offcut alone whose true edge lies further in than others, where no fence reaches it", () => {
    const step = polygon(
      [
        { x: 0, y: 0 },
        { x: 300, y: 0 },
        { x: 300, y: 100 },
        { x: 900, y: 100 },
        { x: 900, y: 600 },
        { x: 0, y: 600 },
      ],
      (i) => `side.${i + 1}`,
    );
    const inner = { ...odd, outline: step, "true edge": "side.3" };
    expect(rows(inner, false)).toMatchObject({ rows: [], findings: [{ code: "offcut-not-for-saw" }] });
    expect(rows({ ...inner, "true edge": "side.4" }, false).rows).toHaveLength(1);
  });

  it("keeps knots and holes out, and minds no clamps", () => {
    const plainRow = { name: "x", length: 1000, width: 500, trim: 5, cost: 0, onHand: true };
    expect(sawnRow({ ...plainRow, zones: [rectangle(0, 0, 80, 80, "clamp")] }, false, 0.5)).toEqual(plainRow);
    const knotty = sawnRow({ ...plainRow, zones: [circle({ x: 700, y: 250 }, 50, "knot")] }, true, 0.5);
    expect(knotty).toMatchObject({ width: 500 });
    if (typeof knotty === "string") return;
    expect(knotty.length).toBe(650);
    // the board goes on beyond the rectangle, and so far from its corner lies the knot
    expect(extentsOf(knotty.within!.whole!).max.x).toBe(1000);
    expect(extentsOf(knotty.within!.knots![0]!).min.x).toBe(650);
  });
});

describe("the stock for the machine", () => {
  const clamp = rectangle(-20, 100, 60, 140, "clamp");

  it("has odd offcuts whole, and the zones of its bed with those of the board", () => {
    const knots = [circle({ x: 500, y: 200 }, 20, "knot")];
    const { rows: found } = rows({ ...odd, knots }, true, {
      clamps: [clamp],
      pins: [circle({ x: 2000, y: 0 }, 9, "pin")],
    });
    expect(found[0]!.outline).toEqual(outline);
    expect(found[0]!.zones!.map(([first]) => first!.by)).toEqual(["knot", "clamp"]);
  });

  it("keeps clear of a clamp in both setups where the sheet is turned over, and of the dowels", () => {
    const whole = { name: "A", length: 900, width: 600, trim: 0 };
    const { rows: found } = rows(whole, true, { clamps: [clamp] }, true);
    const zones = found[0]!.zones!;
    expect(zones.map(([first]) => first!.by)).toEqual(["clamp", "clamp", "dowel", "dowel"]);
    expect(zones.slice(0, 2).map((zone) => [extentsOf(zone).min.y, extentsOf(zone).max.y])).toEqual([
      [100, 140],
      [460, 500],
    ]);
  });
});
