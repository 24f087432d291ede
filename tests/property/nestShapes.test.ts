import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nestShapes } from "../../src/nest/shapes/sheets.js";
import { sheetFaults } from "../nest/shapes/sheetFaults.js";
import { shapeOrders } from "./nestShapesOrders.js";

describe("any layout of true shapes", () => {
  it("lays each part once or leaves it, clear of its neighbours, of the trim, of zones and of what an offcut lacks", () => {
    let together = 0;
    fc.assert(
      fc.property(shapeOrders, (order) => {
        const result = nestShapes(order);
        together += result.sheets.filter((sheet) => sheet.placed.length > 1).length;
        expect(sheetFaults(order, result)).toEqual([]);
      }),
      { seed: 20310409, numRuns: 120, endOnFailure: true },
    );
    expect(together).toBeGreaterThan(100);
  });

  it("is the same for the same seed", () => {
    fc.assert(
      fc.property(shapeOrders, (order) => {
        expect(JSON.stringify(nestShapes(order))).toBe(JSON.stringify(nestShapes(order)));
      }),
      { seed: 7, numRuns: 20 },
    );
  });
});
