import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spread } from "../../../src/drawing/dimensions/lanes.js";

const numbers = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 15 });
const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b);

describe("numbers spread along a lane", () => {
  it("stay where they want to be when they have room", () => {
    expect(spread([10, 20, 40], 4, 0, 100)).toEqual([10, 20, 40]);
  });

  it("push each other apart about their middle", () => {
    expect(spread([50, 50], 4, 0, 100)).toEqual([48, 52]);
    expect(spread([50, 51, 80], 4, 0, 100)).toEqual([48.5, 52.5, 80]);
  });

  it("stay in order, a step apart and within the lane whenever they fit in it", () => {
    fc.assert(
      fc.property(numbers, (wanted) => {
        const places = spread(sorted(wanted), 4.4, 0, 100);
        expect(places.length).toBe(wanted.length);
        for (const [i, place] of places.entries()) {
          expect(place).toBeGreaterThanOrEqual(-1e-9);
          expect(place).toBeLessThanOrEqual(100 + 1e-9);
          if (i > 0) expect(place - places[i - 1]!).toBeGreaterThanOrEqual(4.4 - 1e-9);
        }
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});
