import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sawFaults } from "../nest/saw/followed.js";
import { bevelledOrders, sawOrders } from "./sawOrders.js";

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

  it("bevels every side once, the way it leans, from pieces that can be held or are told, and along strips what parts share", () => {
    let strips = 0;
    let spared = 0;
    fc.assert(
      fc.property(bevelledOrders, (order) => {
        const followed = sawFaults(order, { seed: 4, iterations: 3 });
        expect(followed.faults).toEqual([]);
        strips += followed.strips.length;
        spared += followed.spared;
      }),
      { seed: 20310417, numRuns: 80 },
    );
    expect(strips).toBeGreaterThan(120);
    // bevels of parts below 300 x 50 that are cut along a strip; the others run across it, or are told
    expect(spared).toBeGreaterThan(120);
  });
});
