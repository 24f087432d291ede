import { describe, expect, it } from "vitest";
import { rectangle } from "../../../src/geometry/shapes.js";
import type { NestOrder } from "../../../src/nest/engine.js";
import { nestRectangles } from "../../../src/nest/rectangles/search.js";
import { nestShapes } from "../../../src/nest/shapes/sheets.js";
import { worthOf } from "../../../src/nest/worth.js";
import { disc, items, orderOf, panel, ringOf, sheet, slanted, triangle } from "./orders.js";
import { sheetFaults } from "./sheetFaults.js";

function nested(order: NestOrder) {
  const result = nestShapes(order);
  expect(sheetFaults(order, result)).toEqual([]);
  return result;
}

/** How many sheets the same parts take by their extents, cut from edge to edge: what true shapes must save against. */
const byExtents = (order: NestOrder): number => nestRectangles(order).sheets.length;

describe("true shapes on sheets", () => {
  it("lays twelve parts with three rings on one sheet, discs in the rings' centres", () => {
    const list = items(
      [
        [3, ringOf(300, 200)],
        [3, disc(180)],
        [4, panel(400, 150)],
        [2, triangle(300, 250)],
      ],
      8,
    );
    const order = orderOf(list, [sheet(1250, 625)]);
    expect(byExtents(order)).toBe(2);
    const result = nested(order);
    expect(result.left).toEqual([]);
    expect(result.sheets).toHaveLength(1);
  });

  it("lays triangles in pairs where their extents take two sheets", () => {
    const list = items([[8, triangle(400, 300)]], 6);
    const order = orderOf(list, [sheet(820, 720)]);
    expect(byExtents(order)).toBe(2);
    expect(nested(order).sheets).toHaveLength(1);
  });

  it("lays eight rings on an offcut where only staggered rows fit", () => {
    // three rows of 3, 2 and 3: rows lie sqrt(3)/2 of a ring and gap apart, where square rows are a whole one
    const d = 100;
    const gap = 6;
    const pitch = d + gap;
    const list = items([[8, ringOf(d, 60)]], gap);
    const stock = [
      sheet(3 * pitch - gap + 1, 2 * pitch * Math.sqrt(0.75) + d + 1, { count: 1, cost: 0 }),
      sheet(1000, 500),
    ];
    const result = nested(orderOf(list, stock, 1000));
    expect(result.sheets.map(({ stock: row }) => row)).toEqual([0]);
  });

  it("uses an offcut of odd shape, its trim kept along the slanting side, and keeps clear of zones", () => {
    const outline = slanted(600, 400, 250);
    const zones = [rectangle(0, 0, 60, 60, "clamp")];
    const list = items(
      [
        [2, triangle(250, 200)],
        [2, panel(250, 120)],
      ],
      8,
    );
    const stock = [sheet(600, 400, { outline, zones, trim: 5, count: 1, cost: 0 }), sheet(2000, 1000)];
    const result = nested(orderOf(list, stock));
    expect(result.left).toEqual([]);
    expect(result.sheets.map(({ stock: row }) => row)).toEqual([0]);
  });

  it("lays forty parts on two sheets, where their extents take three", () => {
    const kinds = items(
      [
        [6, triangle(500, 380)],
        [4, ringOf(320, 210)],
        [8, disc(95)],
        [10, panel(300, 180)],
        [12, panel(140, 90)],
      ],
      8,
    );
    const order = orderOf(kinds, [sheet(1250, 980, { trim: 5 })]);
    expect(byExtents(order)).toBe(3);
    const result = nested(order);
    expect(result.sheets).toHaveLength(2);
  });

  it("gives the same bytes for the same seed", () => {
    const list = items(
      [
        [4, triangle(300, 200)],
        [3, ringOf(200, 120)],
        [3, disc(90)],
      ],
      6,
    );
    const order = orderOf(list, [sheet(500, 500)], 20);
    expect(JSON.stringify(nested(order))).toBe(JSON.stringify(nested(order)));
  });

  it("gives a layout at once, no worse than by extents, where one iteration is all it is given", () => {
    const list = items(
      [
        [4, triangle(400, 300)],
        [6, panel(300, 180)],
        [2, ringOf(320, 210)],
        [4, disc(95)],
      ],
      6,
    );
    const order = orderOf(list, [sheet(820, 720)], 1);
    expect(nested(order).sheets.length).toBeLessThan(byExtents(order));
  });

  it("leaves one large rectangle of the sheet that is filled least", () => {
    const list = items(
      [
        [7, triangle(300, 200)],
        [2, ringOf(200, 120)],
      ],
      6,
    );
    const order = orderOf(list, [sheet(1500, 600)], 400);
    const [only] = nested(order).sheets;
    const area = 7 * 30_000 + 2 * Math.PI * 100 ** 2;
    const clear = -worthOf(order)({ sheets: [only!], left: [] }).at(-1)!;
    expect(area / (1500 * 600 - clear)).toBeGreaterThan(0.75);
  });

  it("presses parts together until they touch, up to two hundredths of a millimetre, never nearer", () => {
    const list = items(
      [
        [2, panel(300, 600)],
        [1, disc(600)],
      ],
      8,
    );
    const [only] = nested(orderOf(list, [sheet(2500, 612, { trim: 5 })], 300)).sheets;
    const ends = only!.placed.map(({ item, x }) => x + (item === 2 ? 600 : 300));
    const touching = 5 + 300 + 8 + 300 + 8 + 600;
    expect(Math.max(...ends)).toBeGreaterThanOrEqual(touching - 1e-5);
    expect(Math.max(...ends)).toBeLessThan(touching + 2 * 0.02);
  });

  it("presses parts that lie askew down to the length of one of them", () => {
    const askew = items([[3, panel(84.25, 97)]], 9.5).map((item) => ({ ...item, turns: [0.3, 0.3 + Math.PI] }));
    const outline = slanted(558.75, 333.75, 22);
    const stock = [
      sheet(558.75, 333.75, { outline, trim: 9.5, count: 1, cost: 0 }),
      sheet(600.25, 561.75, { trim: 12 }),
    ];
    expect(nested({ ...orderOf(askew, stock, 120), seed: 62 }).left).toEqual([]);
  });

  it("keeps small parts away from the sheet's edges where there is room among the others", () => {
    const list = items(
      [
        [2, ringOf(420, 330)],
        [4, disc(70)],
      ],
      8,
    );
    const order = orderOf(list, [sheet(2000, 900, { trim: 5 })], 300);
    const small = nested(order).sheets[0]!.placed.filter(({ item }) => item >= 2);
    for (const { x, y } of small) expect(Math.min(x, y, 900 - y - 70)).toBeGreaterThan(60);
  });

  it("leaves a part that no sheet takes, and lays the rest", () => {
    const result = nested(
      orderOf(
        items(
          [
            [1, panel(900, 100)],
            [2, panel(100, 100)],
          ],
          5,
        ),
        [sheet(500, 500)],
      ),
    );
    expect(result.left).toEqual([0]);
  });
});
