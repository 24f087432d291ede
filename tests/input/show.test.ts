import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { count, hertz, kilograms, list, litres, mm, radians, text } from "../../src/input/finding.js";
import { parseLength } from "../../src/input/length.js";
import { type Show, showLength, showQuantity } from "../../src/input/show.js";

const metric: Show = { unit: "mm" };
const sixteenths: Show = { unit: "in", denominator: 16 };

describe("showLength", () => {
  it("shows millimetres bare, with one decimal at most", () => {
    expect(showLength(18.25, metric)).toBe("18.3");
    expect(showLength(18, metric)).toBe("18");
    expect(showLength(18.256, metric, 2)).toBe("18.26");
  });

  it.each([
    [295.275, '11 5/8"'],
    [19.05, '3/4"'],
    [25.4, '1"'],
    [0, '0"'],
    [0.5, '0"'],
    [25.3, '1"'],
    [-19.05, '-3/4"'],
    [1.5875, '1/16"'],
    [304.8, '12"'],
  ])("shows %f mm as the nearest sixteenth, reduced: %s", (length, shown) => {
    expect(showLength(length, sixteenths)).toBe(shown);
  });

  it("reads back within half a step, whatever is shown", () => {
    const shows: readonly (readonly [Show, number])[] = [
      [metric, 0.05],
      ...([8, 16, 32, 64] as const).map((denominator) => [{ unit: "in", denominator }, 12.7 / denominator] as const),
    ];
    fc.assert(
      fc.property(
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.constantFrom(...shows),
        (length, [show, half]) => {
          const back = parseLength(showLength(length, show), "mm");
          expect(Math.abs(back! - length)).toBeLessThanOrEqual(half + 1e-8);
        },
      ),
      { seed: 2 },
    );
  });
});

describe("showQuantity", () => {
  it("names the unit, in the reader's own system", () => {
    expect(showQuantity(mm(18.2), metric)).toBe("18.2 mm");
    expect(showQuantity(mm(19.05), sixteenths)).toBe('3/4"');
    expect(showQuantity(radians(Math.PI / 4), metric)).toBe("45°");
    expect(showQuantity(litres(20), metric)).toBe("20 L");
    expect(showQuantity(litres(28.316846592), sixteenths)).toBe("1 ft3");
    expect(showQuantity(kilograms(12.34), metric)).toBe("12.3 kg");
    expect(showQuantity(kilograms(0.45359237), sixteenths)).toBe("1 lb");
    expect(showQuantity(hertz(31), metric)).toBe("31 Hz");
    expect(showQuantity(count(6), metric)).toBe("6");
    expect(showQuantity(text("box"), metric)).toBe("box");
    expect(showQuantity(list(["mdf-12", "mdf-18", "mdf-25"]), metric)).toBe("mdf-12, mdf-18 or mdf-25");
    expect(showQuantity(list(["mdf-12"]), metric)).toBe("mdf-12");
  });
});
