import fc from "fast-check";
import { expect, it } from "vitest";
import { sawFaults } from "../nest/saw/followed.js";
import { sawOrders } from "../property/sawOrders.js";

it("any of five thousand rip lists, followed, ends with exactly the parts", () => {
  fc.assert(
    fc.property(sawOrders, (order) => {
      expect(sawFaults(order, { seed: 5, iterations: 12 }).faults).toEqual([]);
    }),
    { seed: 20310411, numRuns: 5000, endOnFailure: true },
  );
});
