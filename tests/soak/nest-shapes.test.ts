import fc from "fast-check";
import { expect, it } from "vitest";
import { nestShapes } from "../../src/nest/shapes/sheets.js";
import { sheetFaults } from "../nest/shapes/sheetFaults.js";
import { shapeOrders } from "../property/nestShapesOrders.js";

it("any of three thousand layouts of true shapes is sound", () => {
  fc.assert(
    fc.property(shapeOrders, (order) => {
      expect(sheetFaults(order, nestShapes(order))).toEqual([]);
    }),
    { seed: 20310410, numRuns: 3000, endOnFailure: true },
  );
});
