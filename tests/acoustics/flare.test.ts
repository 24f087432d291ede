import { describe, expect, it } from "vitest";
import { flareL } from "../../src/acoustics/flare.js";

/** The same body in slices, by the midpoint rule. */
function sliced(tube: number, mouth: number, length: number, hidden = 0): number {
  const slices = 200_000;
  const h = (mouth - tube) / 2;
  let sum = 0;
  for (let index = 0; index < slices; index += 1) {
    const u = (index + 0.5) / slices;
    if (u * length > length - hidden) break;
    sum += (mouth / 2 - h * Math.sqrt(1 - u * u)) ** 2;
  }
  return (Math.PI * sum * (length / slices)) / 1e6;
}

describe("a flare", () => {
  it.each([
    [110, 160, 25],
    [110, 170, 60],
    [75, 76, 4],
  ])("of a tube of %d with a mouth of %d over %d is the sum of its slices", (tube, mouth, length) => {
    expect(flareL(tube, { mouth, length })).toBeCloseTo(sliced(tube, mouth, length), 7);
  });

  it("that stands in a wall with its mouth takes what lies behind that, and nothing where the wall is as thick", () => {
    expect(flareL(110, { mouth: 160, length: 25, hidden: 15 })).toBeCloseTo(sliced(110, 160, 25, 15), 7);
    expect(flareL(110, { mouth: 160, length: 25, hidden: 25 })).toBe(0);
  });

  it("that does not widen is a piece of tube", () => {
    expect(flareL(110, { mouth: 110, length: 30 })).toBeCloseTo((Math.PI * 55 ** 2 * 30) / 1e6, 12);
  });
});
