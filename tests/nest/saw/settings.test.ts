import { describe, expect, it } from "vitest";
import { nestParts } from "../../../src/nest/nest.js";
import { settingsOf } from "../../../src/nest/saw/ripList.js";
import { blankPart, board, orderOf, plain } from "../../property/nestOrders.js";

type Size = readonly [count: number, length: number, width: number];

/**
 * Orders of a workshop on one sheet of 2440 x 1220 with 5 of trim, and the settings that a careful person needs, counted by
 * hand: each true edge, each line along the track, each new place of fence or stop block. One person brings 2440 x 650
 * to the table saw; its sled cuts 650.
 */
const orders: readonly { readonly name: string; readonly sizes: readonly Size[]; readonly settings: number }[] = [
  {
    // two true edges; a strip of 150 to a line; the stop block at 600, then at 400
    name: "four walls of one height",
    sizes: [
      [2, 600, 150],
      [2, 400, 150],
    ],
    settings: 5,
  },
  {
    // two true edges; strips of 400 and of 150; the stop block at 600 for panels and walls alike, then at 364
    name: "a closed box",
    sizes: [
      [2, 600, 400],
      [2, 600, 150],
      [2, 364, 150],
    ],
    settings: 6,
  },
  {
    // two true edges; strips of 500 to one line; 300 and 60 off them, the narrow ones at the sled and, when little is left
    // across, at the fence
    name: "shelves and cleats of one length",
    sizes: [
      [10, 500, 300],
      [12, 500, 60],
    ],
    settings: 6,
  },
];

function ripped(sizes: readonly Size[]) {
  const parts = sizes.flatMap(([count, length, width], i) =>
    Array.from({ length: count }, (_, n) => blankPart(`${i}.${n}`, "one", plain(length, width))),
  );
  const sheets = [{ length: 2440, width: 1220, trim: 5 }];
  const order = orderOf(parts, { one: board({ sheets }) }, () => ({
    method: "saw",
    gap: 2.4,
    turns: [0, Math.PI / 2],
  }));
  const saw = {
    kerf: 3.2,
    step: 0.5,
    "longest cross-cut": 650,
    "one person": { length: 2440, width: 650 },
    setting: 0.01,
  };
  const shop = { ...order.shop, saw, "track saw": { kerf: 2.4, "longest cut": 3100 } };
  return nestParts(order.job, shop, order.plan, order.process, { seed: 1, iterations: 150 }).value!;
}

describe("the settings of fence, stop block and line", () => {
  for (const { name, sizes, settings } of orders)
    it(`are no more than a careful person needs: ${name}`, () => {
      const { sheets, rips } = ripped(sizes);
      expect(sheets.length).toBe(1);
      expect(settingsOf(rips!.cuts)).toBeLessThanOrEqual(settings);
    });

  it("give walls of one height from one setting of the fence, so that they equal each other", () => {
    const { rips } = ripped([
      [2, 600, 150],
      [2, 400, 150],
    ]);
    expect(
      rips!.cuts.filter(({ fresh, setting }) => fresh && Math.abs(setting - 150) < 1e-6).length,
    ).toBeLessThanOrEqual(1);
  });
});
