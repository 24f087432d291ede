import fc from "fast-check";
import { expect, it } from "vitest";
import { sawFaults } from "../nest/saw/followed.js";
import { bevelledOrders, repeatOrders, sawOrders } from "../property/sawOrders.js";

it("any of five thousand rip lists, followed, ends with exactly the parts", () => {
  fc.assert(
    fc.property(sawOrders, (order) => {
      expect(sawFaults(order, { seed: 5, iterations: 12 }).faults).toEqual([]);
    }),
    { seed: 20310411, numRuns: 5000, endOnFailure: true },
  );
});

it("any of five hundred rip lists of few sizes that repeat, laid by patterns too, ends with exactly the parts", () => {
  fc.assert(
    fc.property(repeatOrders, (order) => {
      // patterns are tried after 33 layouts
      expect(sawFaults(order, { seed: 6, iterations: 40 }).faults).toEqual([]);
    }),
    { seed: 20310413, numRuns: 500, endOnFailure: true },
  );
});

it("any of two thousand rip lists of bevelled parts bevels every side once, along strips or told how to hold it", () => {
  fc.assert(
    fc.property(bevelledOrders, (order) => {
      expect(sawFaults(order, { seed: 7, iterations: 6 }).faults).toEqual([]);
    }),
    { seed: 20310419, numRuns: 2000, endOnFailure: true },
  );
});
