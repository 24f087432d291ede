import { describe, expect, it } from "vitest";
import type { SawCut, SawnPiece } from "../../../src/model/rip.js";
import { nestParts } from "../../../src/nest/nest.js";
import { settingsOf } from "../../../src/nest/saw/ripList.js";
import { sawingOf } from "../../../src/nest/saw/sawing.js";
import { sawnWorth } from "../../../src/nest/saw/sawnSheets.js";
import { sampleShop } from "../../fixtures/jobAndShop.js";
import { blankPart, board, orderOf, plain } from "../../property/nestOrders.js";

type Size = readonly [count: number, length: number, width: number];

/**
 * Orders of a workshop on one sheet of 2440 x 1220 with 5 of trim, and the settings that a careful person needs, counted by
 * hand: each true edge, each line along the track, each new place of fence or stop block. One person brings 2440 x 650
 * to the table saw; its sled cuts 650. A setting is worth a hundredth of a sheet, as built in.
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
  {
    // two true edges; strips of 300 and, for the back, of 464 to a line; the stop block at 500 for top, bottom and back
    // alike, then at 464 for the sides
    name: "a box of five panels",
    sizes: [
      [2, 500, 300],
      [2, 464, 300],
      [1, 500, 464],
    ],
    settings: 6,
  },
  {
    // two true edges; strips of 400, 350 and, two of them for all eight walls, of 150; the stop block at 600, 500, 364, 314
    name: "two boxes of one height at once",
    sizes: [
      [2, 600, 400],
      [2, 600, 150],
      [2, 364, 150],
      [2, 500, 350],
      [2, 500, 150],
      [2, 314, 150],
    ],
    settings: 9,
  },
  {
    // two true edges; two strips of 180 to one line; the stop block once for each length
    name: "parts of one height",
    sizes: [
      [2, 700, 180],
      [2, 520, 180],
      [2, 430, 180],
      [2, 310, 180],
    ],
    settings: 7,
  },
  {
    // two true edges; along the track a line at 1100 across the sheet and one at 800 for the plate; the fence at 60
    name: "a plate with strips",
    sizes: [
      [1, 1100, 800],
      [6, 1100, 60],
    ],
    settings: 5,
  },
  {
    // two true edges; two strips of 200 to a line; of one the stop block at 1200, and the long ones at the fence at 40; of
    // the other the short ones across, the stop block at 40: along the fence they would be under 300
    name: "long and short narrow parts",
    sizes: [
      [8, 1200, 40],
      [8, 200, 40],
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

  it("are traded for a larger rest at the rate that the shop says", () => {
    // off a board of 1000 x 1000, without a kerf: two strips of 300 at one setting; or one of 300 and, of it, half
    const strip = { x: 0, y: 0, length: 1000, width: 300, part: 0 };
    const off = (cut: Partial<SawCut<number>>): SawCut<number> => ({
      saw: "table",
      way: "rip",
      along: true,
      size: 300,
      kerf: 0,
      ...cut,
    });
    const board = { x: 0, y: 0, length: 1000, width: 1000 };
    const second = {
      ...board,
      y: 300,
      width: 700,
      cut: off({ off: { ...strip, y: 300, part: 1 }, rest: { ...board, y: 600, width: 400 } }),
    };
    const twoStrips = { ...board, cut: off({ off: strip, rest: second }) };
    const halves = { ...strip, cut: off({ way: "cross-cut", along: false, size: 500, off: strip, rest: strip }) };
    const oneStrip = { ...board, cut: off({ off: halves, rest: { ...board, y: 300, width: 700 } }) };
    const items = ["a", "b"].map((id) => ({ id, shape: plain(1000, 300), gap: 0, turns: [0] }));
    const worth = (sheet: SawnPiece<number>, setting: number) =>
      sawnWorth([sheet], { ...sawingOf(sampleShop), setting }, items);
    // a setting more leaves 700 of the board in place of 400: worth it below three tenths of a board
    expect(worth(oneStrip, 0.29)).toBeLessThan(worth(twoStrips, 0.29));
    expect(worth(oneStrip, 0.31)).toBeGreaterThan(worth(twoStrips, 0.31));
  });

  it("are taken rather than a small part clamped alone for its bevel, which costs as much as a setting", () => {
    // 600 x 200 into three of 200 x 200, whose bevel runs along that strip or across it
    const strip = { x: 0, y: 0, length: 600, width: 200 };
    const part = (n: number) => ({ x: 200 * n, y: 0, length: 200, width: 200, part: n });
    const cut = { saw: "table", way: "cross-cut", along: false, size: 200, kerf: 0 } as const;
    const sheet = {
      ...strip,
      cut: {
        ...cut,
        off: part(0),
        rest: { ...strip, x: 200, length: 400, cut: { ...cut, off: part(1), rest: part(2) } },
      },
    };
    const worth = (bevels: { readonly lengthwise: number; readonly across: number }) => {
      const items = ["a", "b", "c"].map((id) => ({ id, shape: plain(200, 200), gap: 0, turns: [0], bevels }));
      return sawnWorth([sheet], { ...sawingOf(sampleShop), setting: 0.02 }, items);
    };
    const board = 600 * 200;
    expect(worth({ lengthwise: 2, across: 0 })).toBeCloseTo(0.02 * board, 6);
    expect(worth({ lengthwise: 0, across: 1 })).toBeCloseTo((0.02 + 3 * 0.02) * board, 6);
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
