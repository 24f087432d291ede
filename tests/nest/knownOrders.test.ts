import { describe, expect, it } from "vitest";
import { areaOfRegion } from "../../src/geometry/measure.js";
import type { NestOrder, NestResult } from "../../src/nest/engine.js";
import { nestRectangles } from "../../src/nest/rectangles/search.js";
import { nestShapes } from "../../src/nest/shapes/sheets.js";
import { knownOrders, staggered } from "./fixtures/orders.js";
import { sheetFaults } from "./shapes/sheetFaults.js";

const boughtOf = ({ stock }: NestOrder, { sheets }: NestResult) =>
  sheets.filter((sheet) => stock[sheet.stock]!.cost > 0).length;

describe("orders whose best layout is known", () => {
  it.each(knownOrders)(
    "$name: the layout by hand is sound, and takes as few sheets as it says",
    ({ order, byHand, toBuy }) => {
      expect(sheetFaults(order, byHand)).toEqual([]);
      expect(boughtOf(order, byHand)).toBe(toBuy);
    },
  );

  it("need no fewer: by area two boards for the forty parts; the rest one, or none", () => {
    for (const { order, toBuy } of knownOrders) {
      const area = order.items.reduce((sum, { shape }) => sum + areaOfRegion(shape), 0);
      const largest = Math.max(...order.stock.map(({ length, width }) => length * width));
      const rack = order.stock
        .filter(({ cost }) => cost === 0)
        .reduce((sum, { length, width }) => sum + length * width, 0);
      expect(Math.max(0, Math.ceil((area - rack) / largest))).toBe(toBuy);
    }
    expect(knownOrders.map(({ order }) => order.items.length)).toEqual([12, 40, 40, 8, 10]);
  });

  it("by extents, cut from edge to edge, take more", () => {
    for (const { order, toBuy } of knownOrders) {
      const plain = {
        ...order,
        edgeToEdge: true,
        stock: order.stock.filter(({ outline }) => outline === undefined),
        iterations: 60,
      };
      expect(boughtOf(plain, nestRectangles(plain))).toBeGreaterThan(toBuy);
    }
    // three straight rows do not lie on the odd offcut
    expect(staggered.straight).toBeGreaterThan(staggered.height);
  });

  it.each(knownOrders)("$name: the search gets there too", ({ order, toBuy, reached = toBuy }) => {
    const result = nestShapes(order);
    expect(sheetFaults(order, result)).toEqual([]);
    expect(result.left).toEqual([]);
    expect(boughtOf(order, result)).toBeLessThanOrEqual(reached);
  });
});
