import { describe, expect, it } from "vitest";
import { centreLineLength } from "../../src/acoustics/centreLine.js";
import { flareL } from "../../src/acoustics/flare.js";
import { roundPortL } from "../../src/acoustics/roundPort.js";

const flare = { mouth: 160, length: 25 };

describe("a round port", () => {
  it("gives the length of each flare from its tube", () => {
    const tube = roundPortL({ outside: 110, length: 200, flares: [] });
    expect(roundPortL({ outside: 110, length: 225, flares: [flare] })).toBeCloseTo(tube + flareL(110, flare), 12);
    expect(roundPortL({ outside: 110, length: 250, flares: [flare, flare] })).toBeCloseTo(
      tube + 2 * flareL(110, flare),
      12,
    );
  });

  it("that bends once round is a ring: 2 pi2 R r2", () => {
    const length = centreLineLength([], [{ radius: 150, turn: 2 * Math.PI }]);
    expect(roundPortL({ outside: 100, length, flares: [] })).toBeCloseTo((2 * Math.PI ** 2 * 150 * 50 ** 2) / 1e6, 12);
  });
});
