import { describe, expect, it } from "vitest";
import type { AcceptedLayout } from "../../src/model/accepted.js";
import { acceptedGroups } from "../../src/nest/accepted.js";
import { nestParts } from "../../src/nest/nest.js";
import { blankPart, board, type Order, orderOf, plain, ring } from "../property/nestOrders.js";

const stock = {
  one: board({ sheets: [{ length: 1200, width: 800, trim: 10, price: 30 }] }),
  two: board({
    sheets: [{ length: 900, width: 600, trim: 5 }],
    offcuts: [{ name: "A", length: 500, width: 300, trim: 0 }],
  }),
};
const parts = [
  blankPart("a", "one", plain(400, 300)),
  blankPart("b", "one", ring(300, 200)),
  blankPart("c", "two", plain(250, 120)),
];
const order = (list = parts, how: object = { method: "cnc" }): Order => orderOf(list, stock, () => how);

const nested = ({ job, shop, plan, process }: Order, seed: number, accepted?: AcceptedLayout) =>
  nestParts(job, shop, plan, process, { seed, iterations: 10, accepted });
const acceptedOf = (from: Order): AcceptedLayout => ({
  version: 1,
  sum: "",
  groups: acceptedGroups(from.plan, from.process, nested(from, 1).value!),
});

describe("a layout that was accepted", () => {
  it("is used again, whatever the seed and whatever the rack holds by now", () => {
    const layout = nested(order(), 1).value!;
    const accepted = acceptedOf(order());
    const bare = { ...order(), shop: { ...order().shop, boards: { one: board({}), two: board({}) } } };
    for (const later of [order(), bare]) {
      const { value, findings } = nested(later, 99, accepted);
      expect(value!.sheets).toEqual(layout.sheets);
      expect(findings).toEqual([]);
    }
  });

  it("holds board by board: where a part has changed, the other boards stay as they were accepted", () => {
    const accepted = acceptedOf(order());
    const changed = [parts[0]!, parts[1]!, blankPart("c", "two", plain(250, 121))];
    const { value, findings } = nested(order(changed), 5, accepted);
    expect(findings.map(({ code }) => code)).toEqual(["accepted-layout-stale"]);
    const of = (board: string) => value!.sheets.filter((sheet) => sheet.board === board);
    expect(of("one")).toEqual(accepted.groups[0]!.sheets);
    expect(of("two").flatMap(({ placed }) => placed.map(({ part }) => part))).toEqual(["set/c"]);
  });

  it("no longer holds where a part is new, gone, cut another way, or lies on its other side", () => {
    const accepted = acceptedOf(order());
    const changes = (later: Order) =>
      nested(later, 1, accepted).findings.flatMap(({ facts }) => {
        const told = facts["parts"];
        return told?.unit === "all" ? told.value : [];
      });
    expect(changes(order([...parts, blankPart("d", "two", plain(90, 90))]))).toEqual([
      expect.stringContaining("is new"),
    ]);
    expect(changes(order(parts.slice(0, 2).reverse().slice(1).concat(parts[2]!)))).toEqual([
      expect.stringContaining("is gone"),
    ]);
    expect(changes(order(parts, { method: "cnc", gap: 9 }))).toHaveLength(3);
    expect(changes(order(parts, { method: "cnc", sides: ["back"] }))).toHaveLength(3);
  });

  it("takes its offcuts out of the rack before other boards are laid", () => {
    const shared = { ...stock, one: stock.two };
    const from = orderOf(parts, shared, () => ({ method: "cnc" }));
    const accepted = acceptedOf(from);
    const names = accepted.groups.flatMap(({ sheets }) => sheets.map(({ sheet }) => sheet));
    const only = { ...accepted, groups: accepted.groups.slice(1) };
    const again = nested(from, 3, only).value!;
    expect(new Set(again.sheets.map(({ sheet }) => sheet)).size).toBe(again.sheets.length);
    expect(names.length).toBeGreaterThan(1);
  });

  it("is not made of a board of which a part is left over", () => {
    const large = order([...parts, blankPart("huge", "one", plain(3000, 100))]);
    expect(acceptedOf(large).groups.map((group) => group.board)).toEqual(["two"]);
  });
});
