import { describe, expect, it } from "vitest";
import { rectangle } from "../../src/geometry/shapes.js";
import type { AcceptedLayout } from "../../src/model/accepted.js";
import type { NestedSheet } from "../../src/model/build.js";
import type { Part } from "../../src/model/part.js";
import type { BoardStock } from "../../src/model/shop.js";
import { acceptedGroups } from "../../src/nest/accepted.js";
import { boundOfBoth } from "../../src/nest/boardBounds.js";
import { isBought } from "../../src/nest/bought.js";
import { nestParts } from "../../src/nest/nest.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { goingOn, restRows } from "../../src/nest/rests.js";
import { yieldOf } from "../../src/nest/yield.js";
import { blankPart, board, type Order, orderOf, plain } from "../property/nestOrders.js";
import { slanted } from "./shapes/orders.js";

const sheet = { length: 2440, width: 1220, trim: 5, price: 40 };
const stock = (more: Partial<BoardStock> = {}) => ({ one: board({ sheets: [sheet], ...more }) });

/** Sawn parts are called saw..., the others are for the machine. */
const how = ({ role }: Part) =>
  role.startsWith("saw")
    ? ({ method: "saw", gap: 3.2, turns: [0] } as const)
    : ({ method: "cnc", gap: 8, turns: [0] } as const);
const part = (role: string, length: number, width: number) => blankPart(role, "one", plain(length, width));
const orderFor = (parts: readonly Part[], boards: Readonly<Record<string, BoardStock>> = stock()): Order =>
  orderOf(parts, boards, how);
const nested = ({ job, shop, plan, process }: Order, accepted?: AcceptedLayout) =>
  nestParts(job, shop, plan, process, { seed: 1, iterations: 20, accepted });
const sheetsOf = (order: Order, accepted?: AcceptedLayout) => nested(order, accepted).value!.sheets;
const names = (sheets: readonly NestedSheet[]) => sheets.map((each) => each.sheet);

describe("what a sawn sheet leaves", () => {
  const both = orderFor([part("m", 600, 500), part("saw", 400, 300)]);

  it("takes what the machine cuts: one sheet is bought, proven fewest, though the machine's part comes first in the job", () => {
    const { sheets, bounds } = nested(both).value!;
    expect(names(sheets)).toEqual(["one 1", "one 1 rest"]);
    expect(sheets.map(isBought)).toEqual([true, false]);
    expect(bounds).toMatchObject([{ count: 1 }]);
  });

  it("lies as it lay on its sheet, its corner where the saw left it, and bears the sheet's trim where it has its edge", () => {
    const [sawn, rest] = sheetsOf(both);
    // trued by 5 below and at the left, 400 x 300 off it: the rest is right of it, from 405 and one cut
    expect(rest).toMatchObject({ length: 2440 - 405 - 3.2, width: 1215, trim: 5, restOf: { sheet: "one 1", y: 5 } });
    expect(rest!.restOf!.x).toBeCloseTo(408.2, 9);
    expect(goingOn(sawn!)).toMatchObject([{ goesOn: "one 1 rest", x: rest!.restOf!.x, y: 5 }]);
    expect(rest!.placed).toMatchObject([{ part: "set/m", x: 5, y: 5, turn: 0 }]);
  });

  it("is used to its edges where it is sawn on all four sides, and only if an offcut of that size were worth keeping", () => {
    const whole = { x: 0, y: 0, length: 2440, width: 1220 };
    const rows = (length: number, width: number, least?: { length: number; width: number }) =>
      restRows(
        [
          {
            ...{ ...sheet, sheet: "one 1", board: part("a", 1, 1).board, placed: [] },
            sawn: { ...whole, cut: { ...cut, rest: { x: 700, y: 100, length, width } } },
          },
        ],
        [],
        both.process,
        least ? { ...both.shop, "least offcut": least } : both.shop,
      );
    const cut = { saw: "table", way: "rip", along: true, size: 1, kerf: 3.2 } as const;
    expect(rows(600, 300)).toMatchObject([{ length: 600, width: 300, trim: 0, cost: 0, count: 1 }]);
    expect(rows(1735, 300)).toMatchObject([{ trim: 0 }]);
    expect(rows(1740, 300)).toMatchObject([{ trim: 5 }]);
    expect(rows(300, 100)).toHaveLength(1);
    expect(rows(300, 99)).toEqual([]);
    expect(rows(1740, 109)).toEqual([]);
    expect(rows(300, 100, { length: 400, width: 100 })).toEqual([]);
  });

  it("keeps the batch's measured thickness", () => {
    const measured = stock({ sheets: [{ ...sheet, measured: 18.4 }] });
    expect(sheetsOf(orderFor([part("saw", 400, 300), part("m", 300, 300)], measured))[1]).toMatchObject({
      restOf: { sheet: "one 1" },
      measured: 18.4,
    });
  });

  it("is left alone where the machine's parts need a sheet anyway, which then takes them all", () => {
    const order = orderFor([part("saw", 400, 300), part("large", 2400, 1000), part("small", 300, 200)]);
    expect(names(sheetsOf(order))).toEqual(["one 1", "one 2"]);
  });

  it("stays in the rack's order: a smaller offcut that does goes before it", () => {
    const racked = stock({ offcuts: [{ name: "A", length: 320, width: 220, trim: 0 }] });
    const order = orderFor([part("saw", 400, 300), part("small", 300, 200)], racked);
    expect(names(sheetsOf(order))).toEqual(["one 1", "one offcut A"]);
  });

  it("serves no other board, though that is of the same stock", () => {
    const parts = [part("saw", 400, 300), blankPart("other", "two", plain(300, 300))];
    const shared = orderFor(parts, { ...stock(), two: stock().one });
    expect(names(sheetsOf(shared))).toEqual(["one 1", "two 1"]);
  });

  it("keeps what the machine leaves clear of clamps, and is passed over, without a word, where they cover it", () => {
    const order = orderFor([part("saw", 400, 300), part("m", 200, 500)]);
    const clampedTo = (length: number): Order => ({
      ...order,
      shop: { ...order.shop, cnc: { ...order.shop.cnc!, clamps: [rectangle(0, 0, length, 1300, "clamp")] } },
    });
    const [, beside] = sheetsOf(clampedTo(100));
    expect(beside).toMatchObject({ sheet: "one 1 rest", placed: [{ x: expect.closeTo(108, 2) }] });
    const { value, findings } = nested(clampedTo(2100));
    expect(names(value!.sheets)).toEqual(["one 1", "one 2"]);
    expect(findings).toEqual([]);
  });

  it("takes dowels and keeps parts clear of them, but not where it would be turned over about its shorter side", () => {
    const turnedOver = (saw: Part): Order => {
      const order = orderFor([saw, part("m", 300, 300)]);
      const registration = [{ board: saw.board, d: 8, into: 10, fromEnds: [15, 25], keepOff: 10 }] as const;
      return { ...order, process: { ...order.process, registration } };
    };
    const [, along] = sheetsOf(turnedOver(part("saw", 400, 300)));
    expect(along!.zones!.map(([first]) => first!.by)).toEqual(["dowel", "dowel"]);
    // 2430 - 1500 is left, 1215 wide
    expect(names(sheetsOf(turnedOver(part("saw", 1500, 1200))))).toEqual(["one 1", "one 2"]);
    expect(names(sheetsOf(orderFor([part("saw", 1500, 1200), part("m", 300, 300)])))).toEqual(["one 1", "one 1 rest"]);
  });

  it("is no near miss of the rack where a part is a little too large for it", () => {
    // the rest is 2031.8 long, 5 off at both ends
    const { value, findings } = nested(orderFor([part("saw", 400, 300), part("m", 2022, 900)]));
    expect(names(value!.sheets)).toEqual(["one 1", "one 2"]);
    expect(findings).toEqual([]);
  });

  it("counts once: as board of its sheet, and as what the machine leaves of it", () => {
    const sheets = sheetsOf(both);
    const [sawn, rest] = sheets;
    const { parts } = both.plan.built;
    const left = (of: NestedSheet) => remainderOf(of, parts, both.process, both.shop).rectangles;
    expect(left(sawn!).every(({ x }) => x < 400)).toBe(true);
    expect(left(rest!)[0]).toMatchObject({ length: expect.closeTo(2031.8 - 5 - 600 - 8 - 5, 6), width: 1205 });
    expect(yieldOf({ sheets }, parts)).toMatchObject({ parts: 600 * 500 + 400 * 300, sheets: 2440 * 1220 });
  });

  it("is a piece of the rip list that goes on, and is no more one where it stays", () => {
    const going = (order: Order) =>
      (nested(order).value!.rips?.cuts ?? [])
        .flatMap(({ off, rest }) => [off, rest])
        .filter((piece) => piece?.goesOn !== undefined);
    expect(going(both)).toMatchObject([{ goesOn: "one 1 rest", becomes: "left", length: 2031.8 }]);
    expect(going(orderFor([part("saw", 400, 300)]))).toEqual([]);
  });

  it("stays with the saw where it is the end of a strip that is bevelled as a whole", () => {
    const cleat = (role: string, bevel: number) =>
      blankPart(role, "one", plain(200, 120), {
        profile: { outer: rectangle(0, 0, 200, 120, ["near", "right", "far", "left"]), holes: [] },
        edges: { far: { bevel, finish: { kind: "bare" }, flush: 0 } },
      });
    const boards = { one: board({ offcuts: [{ name: "A", length: 1200, width: 160, trim: 0 }], sheets: [sheet] }) };
    const cut = (bevel: number) =>
      nested(orderFor([cleat("saw 1", bevel), cleat("saw 2", bevel), part("m", 400, 100)], boards)).value!;
    expect(names(cut(0).sheets)).toEqual(["one offcut A", "one offcut A rest"]);
    const bevelled = cut(Math.PI / 6);
    expect(bevelled.rips!.bevels).toMatchObject([{ side: "upper", piece: { width: 120 } }]);
    expect(names(bevelled.sheets)).toEqual(["one offcut A", "one 1"]);
  });

  it("of an odd offcut is sawn square before it goes on", () => {
    const odd = { name: "A", length: 1600, width: 600, trim: 0, outline: slanted(1600, 600, 300), "true edge": "edge" };
    const boards = { one: board({ offcuts: [odd] }) };
    const last = (order: Order) => nested(order).value!.rips!.cuts.map(({ off, rest }) => [off, rest]);
    const alone = last(orderFor([part("saw", 400, 300)], boards)).flat();
    expect(alone.some((piece) => piece?.becomes === "left" && piece.shape)).toBe(true);
    const on = nested(orderFor([part("saw", 400, 300), part("m", 500, 300)], boards)).value!;
    const piece = on.rips!.cuts.flatMap(({ off, rest }) => [off, rest]).find((each) => each?.goesOn !== undefined);
    const rest = on.sheets.find(({ restOf }) => restOf !== undefined)!;
    expect(piece).toMatchObject({ length: rest.length, width: rest.width });
    expect(piece).not.toHaveProperty("shape");
  });
});

describe("the bound of a board that is cut both ways", () => {
  const rows = [{ name: "sheet", length: 1000, width: 1000, trim: 0, cost: 1, onHand: false }];
  const items = (sizes: readonly number[], gap: number) =>
    sizes.map((side, i) => ({ id: `${side} ${i}`, shape: plain(side, side), gap, turns: [0] }));
  const bound = (sawn: readonly number[], machined: readonly number[]) =>
    boundOfBoth(items(sawn, 3.2), items(machined, 8), rows);

  it("counts one sheet where a rest could take the machine's parts", () => {
    expect(bound([400, 400], [400])).toMatchObject({ count: 1, why: "the area of the blanks" });
  });

  it("counts what no two share, sawn or not", () => {
    expect(bound([700, 700], [900])).toMatchObject({ count: 3, why: "3 blanks of which no two share a sheet" });
  });

  it("is no less than what the sawn parts need by themselves, kerfs and all", () => {
    // four of 247.7 and three kerfs are more than a metre: 16 want two sheets
    expect(bound(Array(16).fill(247.7), [10]).count).toBe(2);
  });
});

describe("a layout with rests that was accepted", () => {
  const parts = [part("saw", 400, 300), part("m", 600, 500)];
  const acceptedOf = (order: Order): AcceptedLayout => ({
    version: 1,
    sum: "",
    groups: acceptedGroups(order.plan, order.process, nested(order).value!),
  });
  const accepted = acceptedOf(orderFor(parts));
  const told = (order: Order) =>
    nested(order, accepted).findings.flatMap(({ code, facts }) => {
      const words = facts["parts"];
      return [code, ...(words?.unit === "all" ? words.value : [])];
    });

  it("is used again as it is", () => {
    const { value, findings } = nested(orderFor(parts, { one: board({}) }), accepted);
    expect(value!.sheets).toEqual(sheetsOf(orderFor(parts)));
    expect(findings).toEqual([]);
  });

  it("lays the machine's parts anew where the sheet they lie on a rest of is cut another way, and says so", () => {
    const later = orderFor([part("saw", 1500, 300), parts[1]!]);
    expect(told(later)).toEqual([
      "accepted-layout-stale",
      "set saw has changed",
      "accepted-layout-stale",
      "sheet one 1 is cut another way",
    ]);
    expect(names(sheetsOf(later, accepted))).toEqual(["one 1", "one 1 rest"]);
  });

  it("keeps the sawn sheet where only a machine's part has changed, and lays that on its rest again, or on none", () => {
    const again = sheetsOf(orderFor([parts[0]!, part("m", 600, 501)]), accepted);
    const cuts = ({ placed, restOf }: NestedSheet) => ({ placed, restOf });
    expect(names(again)).toEqual(["one 1", "one 1 rest"]);
    expect(cuts(again[0]!)).toEqual(cuts(accepted.groups[0]!.sheets[0]!));
    const onNone = sheetsOf(orderFor([parts[0]!, part("m", 2400, 501)]), accepted);
    expect(names(onNone)).toEqual(["one 1", "one 2"]);
    expect(onNone.flatMap(goingOn)).toEqual([]);
  });

  it("holds nothing on the rest of a sheet that could not be accepted itself", () => {
    const left = orderFor([...parts, part("saw too large", 3000, 300)]);
    expect(names(sheetsOf(left))).toEqual(["one 1", "one 1 rest"]);
    expect(acceptedOf(left).groups).toEqual([]);
  });
});
