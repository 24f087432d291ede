import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sawFaults } from "../nest/saw/followed.js";
import { sawOrders } from "./sawOrders.js";

describe("any rip list", () => {
  it("followed by one who knows nothing else ends with exactly the parts, each at its size, from pieces that can be held", () => {
    let cuts = 0;
    let odd = 0;
    fc.assert(
      fc.property(sawOrders, (order) => {
        const followed = sawFaults(order, { seed: 3, iterations: 3 });
        cuts += followed.cuts;
        odd += followed.odd;
        expect(followed.faults).toEqual([]);
      }),
      { seed: 20310409, numRuns: 200 },
    );
    expect(cuts).toBeGreaterThan(3000);
    // some of them cut an odd offcut down to the rectangle on its true edge
    expect(odd).toBeGreaterThan(50);
  });
});
