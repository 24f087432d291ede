import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { NestedSheet } from "../../src/model/build.js";
import { isBought } from "../../src/nest/bought.js";
import { nestParts } from "../../src/nest/nest.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { yieldOf } from "../../src/nest/yield.js";
import { blankPart, board, type Order, orderOf, orders, plain, ring } from "./nestOrders.js";
import { boxesOf, faultsOf, isGuillotine, wasteOf } from "./nestVerify.js";

const runs = { seed: 20310409, numRuns: 300 };
const options = { seed: 7, iterations: 6 };

const nested = ({ job, shop, plan, process }: Order, seed = options.seed) =>
  nestParts(job, shop, plan, process, { ...options, seed });

/** The properties draw the same orders: each is laid once. */
const laid = new Map<string, ReturnType<typeof nested>>();
function laidOnce(order: Order): ReturnType<typeof nested> {
  const key = JSON.stringify(order);
  const known = laid.get(key) ?? nested(order);
  laid.set(key, known);
  return known;
}

const isSawn = ({ process }: Order, sheet: NestedSheet) =>
  process.parts.some((each) => each.method !== "cnc" && sheet.placed.some((one) => one.part === each.part));

describe("any layout", () => {
  it("lays each part once on its own board, clear of its neighbours and of the trim, in a turn it may have", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const { value } = laidOnce(order);
        expect(faultsOf(value!, order.plan.built.parts, order.process)).toEqual([]);
      }),
      runs,
    );
  });

  it("can be taken apart by cuts from edge to edge where it is sawn", () => {
    let sawn = 0;
    fc.assert(
      fc.property(orders, (order) => {
        for (const sheet of laidOnce(order).value!.sheets.filter((each) => isSawn(order, each))) {
          if (sheet.placed.length > 2) sawn++;
          expect(isGuillotine(boxesOf(sheet, order.plan.built.parts), 3.2)).toBe(true);
        }
      }),
      runs,
    );
    expect(sawn).toBeGreaterThan(60);
  });

  it("is the same for the same seed", () => {
    fc.assert(
      fc.property(orders, (order) => {
        expect(JSON.stringify(nested(order))).toBe(JSON.stringify(nested(order)));
      }),
      { ...runs, numRuns: 60 },
    );
  });

  it("has parts and waste that add up to its sheets", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const { parts } = order.plan.built;
        for (const sheet of laidOnce(order).value!.sheets.filter(({ restOf }) => restOf === undefined)) {
          const { sheets, parts: used } = yieldOf({ sheets: [sheet] }, parts);
          // a circle of 500 mm loses about 20 mm2 as a polygon with a chord error of 0.01 mm
          expect(Math.abs(used + wasteOf(sheet, parts) - sheets)).toBeLessThan(25 * sheet.placed.length);
        }
      }),
      { ...runs, numRuns: 100 },
    );
  });

  it("takes no more of the rack than there is, and buys no fewer sheets than its bound says", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const { sheets, bounds } = laidOnce(order).value!;
        for (const [name, stock] of Object.entries(order.shop.boards)) {
          const own = sheets.filter((sheet) => sheet.board === name);
          const offcuts = own.flatMap((sheet) => sheet.offcut ?? []);
          expect(new Set(offcuts).size).toBe(offcuts.length);
          const racked = own.filter((sheet) => sheet.onHand && sheet.offcut === undefined).length;
          expect(racked).toBeLessThanOrEqual(stock.sheets.reduce((sum, sheet) => sum + (sheet["on hand"] ?? 0), 0));
          const bound = bounds.find((each) => each.board === name)?.count ?? 0;
          expect(own.filter(isBought).length).toBeGreaterThanOrEqual(bound);
        }
      }),
      runs,
    );
  });

  it("leaves a part out only with a finding that names it", () => {
    let left = 0;
    fc.assert(
      fc.property(orders, (order) => {
        const { value, findings } = laidOnce(order);
        left += value!.left.length;
        for (const part of value!.left) expect(findings.some((finding) => finding.on.includes(part))).toBe(true);
      }),
      runs,
    );
    expect(left).toBeGreaterThan(50);
  });

  it("has a remainder that is clear of every part by its gap", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const { parts } = order.plan.built;
        for (const sheet of laidOnce(order).value!.sheets) {
          const [rest] = remainderOf(sheet, parts, order.process, order.shop).rectangles;
          if (!rest) continue;
          const part = blankPart("rest", sheet.board, plain(rest.length, rest.width));
          const placed = { part: part.id, x: rest.x, y: rest.y, turn: 0, backUp: false };
          const layout = { of: "", sheets: [{ ...sheet, placed: [...sheet.placed, placed] }], left: [], bounds: [] };
          const how = { ...order.process.parts[0]!, part: part.id, gap: 0, turns: [0], sides: ["face" as const] };
          const here = [...parts.filter((each) => sheet.placed.some((one) => one.part === each.id)), part];
          expect(faultsOf(layout, here, { ...order.process, parts: [...order.process.parts, how] })).toEqual([]);
        }
      }),
      { ...runs, numRuns: 100 },
    );
  });
});

describe("the look at a layout from outside", () => {
  const parts = [
    blankPart("a", "one", plain(400, 300)),
    blankPart("b", "one", plain(200, 100)),
    blankPart("c", "one", ring(300, 200)),
  ];
  const order = orderOf(parts, { one: board({ sheets: [{ length: 1200, width: 800, trim: 10 }] }) }, () => ({}));
  const layout = nested(order).value!;
  const [sheet] = layout.sheets;
  const shifted = (role: string, dx: number, dy: number) => ({
    ...layout,
    sheets: [
      {
        ...sheet!,
        placed: sheet!.placed.map((one) => (one.part.endsWith(role) ? { ...one, x: one.x + dx, y: one.y + dy } : one)),
      },
    ],
  });
  const faults = (changed: typeof layout) => faultsOf(changed, parts, order.process).join();

  it("finds a part that is pushed over the trim, into a neighbour, or a tenth of a millimetre into the gap", () => {
    expect(faults(layout)).toBe("");
    const a = sheet!.placed.find((one) => one.part === parts[0]!.id)!;
    const b = sheet!.placed.find((one) => one.part === parts[1]!.id)!;
    expect(faults(shifted("/a", 9.9 - a.x, 0))).toContain("over the trim");
    expect(faults(shifted("/b", a.x - b.x + 50, a.y - b.y + 50))).toContain("overlap");
    const box = boxesOf(sheet!, parts);
    const beside = box[sheet!.placed.indexOf(a)]!.x1 + 7.9;
    expect(faults(shifted("/b", beside - b.x, a.y - b.y))).toContain("nearer than 8");
  });

  it("finds a part that is there twice, or not at all", () => {
    const twice = {
      ...layout,
      sheets: [...layout.sheets, { ...sheet!, sheet: "one 2", placed: sheet!.placed.slice(0, 1) }],
    };
    expect(faults(twice)).toContain("placed 2 times");
    expect(faults({ ...layout, sheets: [{ ...sheet!, placed: sheet!.placed.slice(1) }] })).toContain("placed 0 times");
  });

  it("tells a pinwheel, which no saw can take apart, from three strips", () => {
    const box = (x0: number, y0: number, x1: number, y1: number) => ({ x0, y0, x1, y1 });
    const pinwheel = [box(0, 0, 60, 40), box(62, 0, 100, 60), box(40, 62, 100, 100), box(0, 42, 38, 100)];
    expect(isGuillotine(pinwheel, 2)).toBe(false);
    expect(isGuillotine([box(0, 0, 100, 30), box(0, 32, 100, 60), box(0, 62, 100, 100)], 2)).toBe(true);
    expect(isGuillotine([box(0, 0, 100, 30), box(0, 31, 100, 60)], 2)).toBe(false);
  });
});
