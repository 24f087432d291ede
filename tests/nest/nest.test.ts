import { describe, expect, it } from "vitest";
import { rectangle } from "../../src/geometry/shapes.js";
import { wordsOf } from "../../src/input/words.js";
import type { AcceptedLayout } from "../../src/model/accepted.js";
import { boardId } from "../../src/model/ids.js";
import type { BoardStock, Offcut } from "../../src/model/shop.js";
import { acceptedGroups } from "../../src/nest/accepted.js";
import { nestFindings, nestParts } from "../../src/nest/nest.js";
import { blankPart, board, type Order, orderOf, plain, ring } from "../property/nestOrders.js";
import { slanted } from "./shapes/orders.js";

const options = { seed: 1, iterations: 60 };
type Case = Order & { readonly accepted?: AcceptedLayout };
const nested = ({ job, shop, plan, process, accepted }: Case) =>
  nestParts(job, shop, plan, process, { ...options, accepted });
const codes = (order: Case) => nested(order).findings.map((finding) => finding.code);

/** Trim 10 all round: 1180 x 780 to lie on. */
const sheet = { length: 1200, width: 800, trim: 10 };
const sized = (length: number, width: number, boards: Readonly<Record<string, BoardStock>>, how = {}) =>
  orderOf([blankPart("a", "one", plain(length, width))], boards, () => how);

/** What was accepted of an order once. */
function acceptedOf(order: Order): AcceptedLayout {
  const groups = acceptedGroups(order.plan, order.process, nested(order).value!);
  return { version: 1, sum: "", groups };
}

const one = { one: board({ sheets: [sheet] }) };

const sawn = { method: "saw", gap: 3.2 } as const;
const offcutOf = (length: number) => ({ one: board({ offcuts: [{ name: "A", length, width: 60, trim: 0 }] }) });
/** With a table saw whose fence reaches so far, and no track. */
function reaching(reach: number): Order {
  const order = sized(900, 700, one, sawn);
  return { ...order, shop: { ...order.shop, saw: { ...order.shop.saw, "longest rip": reach } } };
}

/** A panel with a bevel of 45 degrees along it, the back smaller, that is an offcut as it is. */
function bevelled(length: number, width: number, reach = 1000, thickness = 18): Order {
  const part = blankPart("a", "one", plain(length, width), {
    thickness,
    edges: { side: { bevel: Math.PI / 4, finish: { kind: "bare" }, flush: 0 } },
  });
  const outer = part.profile.outer.map((v, i) => ({ ...v, by: i === 0 ? "side" : "square" }));
  const offcuts = [{ name: "A", length, width, trim: 0 }];
  const order = orderOf([{ ...part, profile: { outer, holes: [] } }], { one: board({ offcuts }) }, () => sawn);
  return { ...order, shop: { ...order.shop, saw: { ...order.shop.saw, "longest rip": reach } } };
}

/** A sheet, and an offcut of 600 x 400. */
const rack = (more: Partial<Offcut>) => ({
  one: board({ sheets: [sheet], offcuts: [{ name: "A", length: 600, width: 400, trim: 0, ...more }] }),
});
const turnedOver = (order: Order): Order => ({
  ...order,
  process: {
    ...order.process,
    registration: [{ board: boardId("one"), d: 8, into: 10, fromEnds: [15, 25], keepOff: 10 }],
  },
});
/** With a clamp on the machine's bed that reaches so far from its zero. */
const clampedTo = (length: number, order: Order): Order => ({
  ...order,
  shop: { ...order.shop, cnc: { ...order.shop.cnc!, clamps: [rectangle(0, 0, length, 400, "clamp")] } },
});

/** For every code: an order that raises it, and one just short of it. */
const cases: Readonly<Record<string, { readonly raised: Case; readonly short: Case }>> = {
  "part-over-sheet": {
    raised: sized(1180.1, 300, { one: board({ sheets: [sheet] }) }),
    short: sized(1180, 780, { one: board({ sheets: [sheet] }) }),
  },
  "board-without-sheets": {
    raised: sized(100, 100, { one: board({}) }),
    short: sized(100, 100, { one: board({ offcuts: [{ name: "A", length: 100, width: 100, trim: 0 }] }) }),
  },
  "stock-used-up": {
    raised: orderOf(
      [1, 2, 3].map((n) => blankPart(`p${n}`, "one", plain(100, 100))),
      { one: board({ offcuts: [{ name: "A", length: 323.9, width: 100, trim: 0 }] }) },
      () => ({ gap: 12 }),
    ),
    short: orderOf(
      [1, 2, 3].map((n) => blankPart(`p${n}`, "one", plain(100, 100))),
      { one: board({ offcuts: [{ name: "A", length: 324, width: 100, trim: 0 }] }) },
      () => ({ gap: 12 }),
    ),
  },
  // a saw goes by a side that is named its true edge
  "offcut-not-for-saw": {
    raised: sized(100, 100, rack({ outline: slanted(600, 400, 100) }), sawn),
    short: sized(100, 100, rack({ outline: slanted(600, 400, 100), "true edge": "edge" }), sawn),
  },
  // a dowel stands 25 from the right, in the middle: with the slant from 450 up, or from 500 up, of 600
  "board-without-dowels": {
    raised: turnedOver(sized(100, 100, rack({ outline: slanted(600, 400, 250) }))),
    short: turnedOver(sized(100, 100, rack({ outline: slanted(600, 400, 150) }))),
  },
  // a rule of 3: nothing is said of what misses by more
  "near-miss": {
    raised: sized(603, 400, rack({})),
    short: sized(603.1, 400, rack({})),
  },
  "board-under-zones": {
    raised: clampedTo(600, sized(100, 100, rack({}))),
    short: clampedTo(599.9, sized(100, 100, rack({}))),
  },
  "accepted-layout-stale": {
    raised: { ...sized(100.01, 100, one), accepted: acceptedOf(sized(100, 100, one)) },
    short: { ...sized(100, 100, one), accepted: acceptedOf(sized(100, 100, one)) },
  },
  // its blade takes 3.2
  "part-under-kerf": { raised: sized(300, 3.2, one, sawn), short: sized(300, 3.5, one, sawn) },
  "piece-too-small": { raised: sized(100, 60, offcutOf(299), sawn), short: sized(100, 60, offcutOf(300), sawn) },
  "strip-too-narrow": { raised: sized(49, 49, one, sawn), short: sized(50, 49, one, sawn) },
  "cut-over-saw": { raised: reaching(699.5), short: reaching(700) },
  "bevel-too-small": { raised: bevelled(299.5, 60), short: bevelled(300, 60) },
  // of a board 60 thick the back is as much narrower
  "bevel-takes-all": { raised: bevelled(400, 60, 1000, 60), short: bevelled(400, 60.1, 1000, 60) },
  // between fence and blade at the table 700 - 18
  "bevel-over-saw": { raised: bevelled(900, 700, 681.5), short: bevelled(900, 700, 682) },
  // the bed is 2500 x 1300
  "sheet-over-machine": {
    raised: sized(100, 100, { one: board({ sheets: [{ length: 2500.1, width: 1300, trim: 0 }] }) }),
    short: sized(100, 100, { one: board({ sheets: [{ length: 1300, width: 2500, trim: 0 }] }) }),
  },
};

describe("every finding of the nest", () => {
  it("has an order that raises it and one just short of it", () => {
    expect(Object.keys(cases).sort()).toEqual(nestFindings.map((def) => def.code).sort());
  });

  for (const def of nestFindings)
    it(`${def.code}: is raised, in words that can be read, and not raised just short of it`, () => {
      const { raised, short } = cases[def.code]!;
      const { findings } = nested(raised);
      expect(findings.map((finding) => finding.code)).toEqual([def.code]);
      const { words, next } = wordsOf(findings[0]!, def, { unit: "mm" });
      expect(`${words} ${next}`).not.toMatch(/[{}]|undefined|NaN|Infinity/);
      expect(codes(short)).toEqual([]);
    });
});

describe("a part that no sheet takes", () => {
  const over = (order: Order) => nested(order).findings[0]!.facts;

  it("is told by how much, for the sheet that misses by least", () => {
    const boards = { one: board({ sheets: [sheet, { length: 1230, width: 600, trim: 10 }] }) };
    expect(over(sized(1211.5, 500, boards))).toMatchObject({ over: { value: 1.5 }, length: { value: 1211.5 } });
  });

  it("is told when a turn that its grain forbids would do, or another stock of the same board", () => {
    const tall = sized(700, 1100, { one: board({ sheets: [sheet] }) }, { turns: [0] });
    expect(over(tall)["way"]).toMatchObject({ value: expect.stringContaining("across the grain") });
    const larger = { one: board({ sheets: [sheet] }), two: board({ sheets: [{ ...sheet, length: 2440 }] }) };
    expect(over(sized(1500, 700, larger))["way"]).toMatchObject({ value: expect.stringContaining("cut it from two") });
    const thicker = {
      one: board({ sheets: [sheet] }),
      two: board({ thickness: 19, sheets: [{ ...sheet, length: 2440 }] }),
    };
    expect(over(sized(1500, 700, thicker))["way"]).toMatchObject({ value: expect.stringContaining("smaller") });
  });

  it("stays out alone: all else is laid", () => {
    const parts = [blankPart("big", "one", plain(2000, 100)), blankPart("small", "one", plain(200, 100))];
    const { value } = nested(orderOf(parts, { one: board({ sheets: [sheet] }) }, () => ({})));
    expect(value!.left).toEqual(["set/big"]);
    expect(value!.sheets.flatMap((each) => each.placed.map((one) => one.part))).toEqual(["set/small"]);
  });
});

it("a part is told to need more to be held, though turned it would not fit at all", () => {
  const sliver = { one: board({ offcuts: [{ name: "A", length: 800, width: 30, trim: 0 }] }) };
  expect(codes(sized(500, 20, sliver, { ...sawn, turns: [0, Math.PI / 2] }))).toEqual(["piece-too-small"]);
});

describe("a near miss", () => {
  const told = (length: number, width: number, more: Partial<Offcut> = {}) =>
    nested(sized(length, width, rack(more)))
      .findings.filter(({ code }) => code === "near-miss")
      .map(({ facts }) => [facts["short"]!.value, facts["row"]!.value]);

  it("says by how much and on which offcut, whichever way the part is turned", () => {
    expect(told(600.6, 300)).toEqual([[expect.closeTo(0.6, 9), "offcut A"]]);
    expect(told(300, 600.6)).toEqual([[expect.closeTo(0.6, 9), "offcut A"]]);
    expect(told(600, 400)).toEqual([]);
    expect(told(590.5, 300, { trim: 5 })).toEqual([[expect.closeTo(0.5, 9), "offcut A"]]);
  });

  it("stands beside a part over every sheet: which offcut is nearest", () => {
    const only = { one: board({ offcuts: [{ name: "B", length: 600, width: 400, trim: 0 }] }) };
    expect(nested(sized(600.6, 300, only)).findings[0]!.facts).toMatchObject({
      over: { value: expect.closeTo(0.6, 9) },
      nearest: { value: "offcut B" },
    });
  });
});

describe("the stock", () => {
  const unturned = () => ({ turns: [0] });
  const many = (n: number, l: number, w: number, name = "one") =>
    Array.from({ length: n }, (_, i) => blankPart(`${name}${i}`, name, plain(l, w)));

  it("comes from the rack first: the offcut that will do, then sheets on hand, and only then the merchant", () => {
    const stock = board({
      sheets: [{ ...sheet, "on hand": 1, price: 30 }],
      offcuts: [
        { name: "B", length: 700, width: 400, trim: 0 },
        { name: "A", length: 420, width: 320, trim: 0 },
      ],
    });
    const names = (n: number) =>
      nested(orderOf(many(n, 400, 300), { one: stock }, unturned))
        .value!.sheets.map((each) => each.sheet)
        .sort();
    expect(names(1)).toEqual(["one offcut A"]);
    // 4 on a whole sheet, one on each offcut; for the seventh a sheet must be bought, which spares the offcuts
    expect(names(6)).toEqual(["one 1", "one offcut A", "one offcut B"]);
    expect(names(7)).toEqual(["one 1", "one 2"]);
    const { sheets } = nested(orderOf(many(7, 400, 300), { one: stock }, unturned)).value!;
    expect(sheets.filter((each) => !each.onHand).map((each) => each.price)).toEqual([30]);
    expect(sheets.filter((each) => each.onHand).map((each) => each.price)).toEqual([undefined]);
  });

  it("is bought as cheaply as the parts can be laid", () => {
    const sheets = [
      { length: 2440, width: 1220, trim: 0, price: 60 },
      { length: 1220, width: 1220, trim: 0, price: 35 },
    ];
    const bought = (n: number) =>
      nested(orderOf(many(n, 600, 600), { one: board({ sheets }) }, () => ({ gap: 5 }))).value!.sheets.map(
        (each) => each.price,
      );
    expect(bought(4)).toEqual([35]);
    expect(bought(8)).toEqual([60]);
    expect(bought(12).reduce((sum, price) => sum! + price!, 0)).toBe(95);
  });

  it("is shared by two boards that are cut from it", () => {
    const stock = board({ sheets: [sheet], offcuts: [{ name: "A", length: 500, width: 400, trim: 0 }] });
    const order = orderOf(
      [...many(1, 400, 300, "one"), ...many(1, 400, 300, "two")],
      { one: stock, two: stock },
      () => ({}),
    );
    const both = { ...order, job: { ...order.job, boards: { one: { stock: "one" }, two: { stock: "one" } } } };
    expect(nested(both).value!.sheets.map((each) => each.sheet)).toEqual(["one offcut A", "two 1"]);
  });

  it("gives sheets names that no file system takes for the same", () => {
    const stock = board({
      sheets: [sheet],
      offcuts: [
        { name: "a", length: 420, width: 320, trim: 0 },
        { name: "A", length: 430, width: 320, trim: 0 },
      ],
    });
    const { sheets } = nested(orderOf(many(2, 400, 300), { one: stock }, () => ({}))).value!;
    expect(sheets.map((each) => each.sheet)).toEqual(["one offcut a", "one offcut A (2)"]);
  });
});

describe("a layout", () => {
  it("keeps what is cut by machine off what is sawn, on the rest of its sheet; sawn and hand-cut parts share", () => {
    const parts = ["a", "b", "c"].map((role) => blankPart(role, "one", plain(200, 100)));
    const methods = { a: "saw", b: "hand", c: "cnc" } as const;
    const gaps = { a: 3.2, b: 9.2, c: 8 };
    const { sheets } = nested(
      orderOf(parts, { one: board({ sheets: [sheet] }) }, (part) => {
        const role = part.role as "a" | "b" | "c";
        return { method: methods[role], gap: gaps[role] };
      }),
    ).value!;
    const held = sheets.map((each) => each.placed.map((one) => one.part).sort());
    expect(held).toEqual([["set/a", "set/b"], ["set/c"]]);
    expect(sheets.map((each) => each.sheet)).toEqual(["one 1", "one 1 rest"]);
  });

  it("lies with the back up where only the back is worked", () => {
    const lies = (sides: readonly ("face" | "back")[]) =>
      nested(sized(200, 100, { one: board({ sheets: [sheet] }) }, { sides })).value!.sheets[0]!.placed[0]!.backUp;
    expect(lies(["face"])).toBe(false);
    expect(lies(["back"])).toBe(true);
    expect(lies(["face", "back"])).toBe(false);
  });

  it("lays small parts into the opening of a ring that a machine cuts, and not where a saw goes through", () => {
    const parts = [blankPart("ring", "one", ring(780, 600)), blankPart("block", "one", plain(380, 380))];
    const on = (method: "cnc" | "saw") =>
      nested(orderOf(parts, { one: board({ sheets: [{ length: 800, width: 800, trim: 10 }] }) }, () => ({ method })))
        .value!.sheets.length;
    expect(on("cnc")).toBe(1);
    expect(on("saw")).toBe(2);
  });

  it("says what it was made for, and not by which seed", () => {
    const order = sized(200, 100, { one: board({ sheets: [sheet] }) });
    const other = sized(200, 100.5, { one: board({ sheets: [sheet] }) });
    const { job, shop, plan, process } = order;
    expect(nested(order).value!.of).toBe(nestParts(job, shop, plan, process, { seed: 9, iterations: 3 }).value!.of);
    expect(nested(order).value!.of).not.toBe(nested(other).value!.of);
  });

  it("of no parts has no sheets and no bounds", () => {
    expect(nested(orderOf([], {}, () => ({}))).value).toMatchObject({ sheets: [], left: [], bounds: [] });
  });
});

describe("the bound", () => {
  const bound = (n: number, l: number, w: number, stock: Partial<BoardStock>, how = {}) =>
    nested(
      orderOf(
        Array.from({ length: n }, (_, i) => blankPart(`p${i}`, "one", plain(l, w))),
        { one: board({ sheets: [{ length: 1000, width: 1000, trim: 0 }], ...stock }) },
        () => how,
      ),
    ).value!.bounds;

  it("by area: 25 squares of 200 mm fill a sheet of 1 m, the 26th needs another", () => {
    expect(bound(25, 200, 200, {}, { gap: 0.001 })).toMatchObject([{ count: 1, why: "the area of the blanks" }]);
    expect(bound(26, 200, 200, {}, { gap: 0.001 })).toMatchObject([{ count: 2 }]);
  });

  it("counts the kerf where every cut goes from edge to edge: 4 x 247.6 and 3 kerfs of 3.2 are 1000", () => {
    expect(bound(16, 247.6, 247.6, {}, { method: "saw", gap: 3.2 })).toMatchObject([{ count: 1 }]);
    expect(bound(16, 247.7, 247.6, {}, { method: "saw", gap: 3.2 })).toMatchObject([{ count: 2 }]);
  });

  it("counts rectangles of which no two share a sheet, less what the rack may take", () => {
    expect(bound(3, 510, 510, {})).toMatchObject([{ count: 3, why: "3 blanks of which no two share a sheet" }]);
    expect(bound(3, 496, 496, {})).toMatchObject([{ count: 1 }]);
    // two of 497 lie corner to corner, 6 apart both ways and so more than 8; of 498 they would need 2 x 498 + 8 / sqrt(2)
    expect(bound(2, 497, 497, {})).toMatchObject([{ count: 1 }]);
    expect(bound(2, 498, 498, {})).toMatchObject([{ count: 2 }]);
    const rack = { offcuts: [{ name: "A", length: 600, width: 600, trim: 0 }] };
    expect(bound(3, 510, 510, rack)).toMatchObject([{ count: 2 }]);
    expect(bound(1, 510, 510, rack)).toMatchObject([{ count: 0, why: "the rack may take them all" }]);
  });
});
