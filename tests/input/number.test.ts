import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatNumber } from "../../src/input/number.js";

describe("formatNumber", () => {
  it("rounds halves away from zero, those that a double only almost holds too", () => {
    expect(formatNumber(1.005, 2)).toBe("1.01");
    expect(formatNumber(-1.005, 2)).toBe("-1.01");
    expect(formatNumber(2.5, 0)).toBe("3");
    expect(formatNumber(-2.5, 0)).toBe("-3");
    expect(formatNumber(0.1 + 0.2, 9)).toBe("0.3");
    expect(formatNumber(1.0049, 2)).toBe("1");
  });

  it("drops trailing zeros unless they are wanted", () => {
    expect(formatNumber(12.3, 3)).toBe("12.3");
    expect(formatNumber(100, 2)).toBe("100");
    expect(formatNumber(100, 2, { keepZeros: true })).toBe("100.00");
    expect(formatNumber(0, 2, { keepZeros: true })).toBe("0.00");
  });

  it("never writes an exponent or a negative zero", () => {
    expect(formatNumber(1e-9, 4)).toBe("0");
    expect(formatNumber(-1e-9, 4)).toBe("0");
    expect(formatNumber(-0, 1)).toBe("0");
    expect(formatNumber(1e22, 3)).toBe("10000000000000000000000");
  });

  it("adds nothing to digits that a double does not have", () => {
    expect(formatNumber(9007, 12)).toBe("9007");
    expect(formatNumber(2463.8, 12)).toBe("2463.8");
  });

  it("throws on what is no number, which no reader can cause", () => {
    expect(() => formatNumber(Number.NaN, 1)).toThrow(RangeError);
  });

  it("stays within half a step of any length", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.integer({ min: 0, max: 9 }),
        (value, decimals) => {
          const shown = formatNumber(value, decimals);
          expect(shown).toMatch(/^-?\d+(\.\d*[1-9])?$/);
          expect(Math.abs(Number(shown) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9) + 1e-10);
        },
      ),
      { seed: 1 },
    );
  });
});
