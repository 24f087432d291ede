import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaOfRegion } from "../../src/geometry/measure.js";
import type { Layout, NestedSheet } from "../../src/model/build.js";
import { isBought } from "../../src/nest/bought.js";
import { nestParts } from "../../src/nest/nest.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { yieldOf } from "../../src/nest/yield.js";
import { replay } from "../nest/saw/cutter.js";
import { blankPart, board, type Order, orderOf, plain, plate, ring } from "./nestOrders.js";
import { faultsOf } from "./nestVerify.js";

const size = (min: number, max: number) => fc.integer({ min: min * 2, max: max * 2 }).map((halves) => halves / 2);
const sawn = fc.tuple(size(100, 900), size(60, 600));
const machined = fc.oneof(
  fc.tuple(size(60, 900), size(60, 500)).map(([l, w]) => plain(l, w)),
  fc.tuple(size(120, 500), size(50, 90)).map(([d, share]) => ring(d, (d * share) / 100)),
  fc.tuple(size(120, 900), size(100, 600)).map(([l, w]) => plate(l, w)),
);
const sheets = fc.constantFrom(
  [{ length: 2440, width: 1220, trim: 5 }],
  [{ length: 1525, width: 1525, trim: 0 }],
  [
    { length: 2500, width: 1250, trim: 10, price: 60 },
    { length: 1250, width: 1250, trim: 10, price: 33 },
  ],
);
const kerf = 3.2;

/** Boards of which some parts are sawn and some cut by machine; with a grain no part is turned by a quarter. */
const orders: fc.Arbitrary<Order> = fc
  .tuple(
    fc.array(sawn, { minLength: 1, maxLength: 12 }),
    fc.array(machined, { minLength: 1, maxLength: 8 }),
    sheets,
    fc.boolean(),
  )
  .map(([bySaw, byMachine, sheets, grain]) => {
    const parts = [
      ...byMachine.map((blank, i) => blankPart(`m${i}`, "one", blank)),
      ...bySaw.map(([l, w], i) => blankPart(`s${i}`, "one", plain(l, w))),
    ];
    const turns = grain ? [0, Math.PI] : [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2];
    return orderOf(parts, { one: board({ sheets, grain }) }, ({ role }) =>
      role.startsWith("s") ? { method: "saw", gap: kerf, turns } : { method: "cnc", gap: 8, turns },
    );
  });

const nested = ({ job, shop, plan, process }: Order): Layout =>
  nestParts(job, shop, plan, process, { seed: 5, iterations: 4 }).value!;

/** Only the parts whose names begin so. */
function only(order: Order, role: string): Order {
  const { built } = order.plan;
  const parts = built.parts.filter((part) => part.role.startsWith(role));
  return { ...order, plan: { ...order.plan, built: { ...built, parts } } };
}

/** What a layout buys: its cost, by area where the sheets have no price. */
const costOf = ({ sheets }: Layout): number =>
  sheets.filter(isBought).reduce((sum, { price, length, width }) => sum + (price ?? length * width), 0);

const restsOf = (all: readonly NestedSheet[], { sheet }: NestedSheet) =>
  all.filter(({ restOf }) => restOf?.sheet === sheet);

/** A sheet with all that is cut from it, by the saw and of its rests by the machine, where that lies on the whole sheet. */
function whole(sheet: NestedSheet, all: readonly NestedSheet[]): NestedSheet {
  const { sawn: _sawn, ...board } = sheet;
  const placed = restsOf(all, sheet).flatMap(({ restOf, placed }) =>
    placed.map((one) => ({ ...one, x: one.x + restOf!.x, y: one.y + restOf!.y })),
  );
  return { ...board, placed: [...sheet.placed, ...placed] };
}

describe("a board that is cut both ways", () => {
  it("has every part once: on its own sheet or its rest, within it, and on the whole sheet clear of what is sawn", () => {
    let rests = 0;
    fc.assert(
      fc.property(orders, (order) => {
        const layout = nested(order);
        const { parts } = order.plan.built;
        expect(faultsOf(layout, parts, order.process)).toEqual([]);
        rests += layout.sheets.filter(({ restOf }) => restOf !== undefined).length;
        const wholes = layout.sheets
          .filter(({ restOf }) => restOf === undefined)
          .map((sheet) => whole(sheet, layout.sheets));
        const aKerfApart = order.process.parts.map((each) => ({ ...each, gap: kerf }));
        expect(faultsOf({ ...layout, sheets: wholes }, parts, { ...order.process, parts: aKerfApart })).toEqual([]);
      }),
      { seed: 20310409, numRuns: 80 },
    );
    expect(rests).toBeGreaterThan(40);
  });

  it("buys no more, in sheets of one size and in cost of several, than cut apart, and often less", () => {
    let spared = 0;
    fc.assert(
      fc.property(orders, (order) => {
        const layout = nested(order);
        const apart = [nested(only(order, "s")), nested(only(order, "m"))];
        const before = apart.reduce((sum, one) => sum + costOf(one), 0);
        expect(layout.left).toEqual(apart.flatMap(({ left }) => left));
        expect(costOf(layout)).toBeLessThanOrEqual(before * (1 + 1e-9));
        if (costOf(layout) < before * (1 - 1e-9)) spared++;
        const [bound] = layout.bounds;
        expect(layout.sheets.filter(isBought).length).toBeGreaterThanOrEqual(bound!.count);
      }),
      { seed: 20310409, numRuns: 40 },
    );
    expect(spared).toBeGreaterThan(20);
  });

  it("leaves the saw with each rest as large as the machine is told, and counts its board once", () => {
    fc.assert(
      fc.property(orders, (order) => {
        const { sheets, rips } = nested(order);
        const { parts } = order.plan.built;
        const own = sheets.filter(({ restOf }) => restOf === undefined);
        const boards = new Map(own.map((sheet) => [sheet.sheet, { length: sheet.length, width: sheet.width }]));
        const bench = replay(rips ?? { cuts: [], bevels: [] }, boards, {
          thickness: 18,
          step: order.shop.saw.step,
          kerfs: { table: kerf, track: 0 },
          heldLength: 300,
          heldWidth: 50,
          reach: order.shop.saw["longest rip"],
        });
        const made = (rips?.cuts ?? []).flatMap(({ off, rest }) => [off, rest]).filter((piece) => piece?.goesOn);
        const told = sheets.filter(({ restOf }) => restOf !== undefined);
        expect(made.map((piece) => piece!.goesOn).sort()).toEqual(told.map(({ sheet }) => sheet).sort());
        for (const piece of made) {
          const { length, width } = told.find(({ sheet }) => sheet === piece!.goesOn)!;
          const lying = bench.left.get(piece!.name)!;
          expect([lying.length, lying.width]).toEqual([expect.closeTo(length, 6), expect.closeTo(width, 6)]);
        }
        const taken = sheets.flatMap((sheet) => [
          ...sheet.placed.map(({ part }) => areaOfRegion(parts.find(({ id }) => id === part)!.blank)),
          ...remainderOf(sheet, parts, order.process, order.shop).regions.map(areaOfRegion),
        ]);
        const all = own.reduce((sum, { length, width }) => sum + length * width, 0);
        expect(yieldOf({ sheets }, parts).sheets).toBeCloseTo(all, 3);
        expect(taken.reduce((sum, area) => sum + area, 0)).toBeLessThanOrEqual(all);
      }),
      { seed: 20310409, numRuns: 40 },
    );
  });
});
