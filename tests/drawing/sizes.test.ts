import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { overallSize, runningSize, sizePair, spanSize, toolSize } from "../../src/drawing/sizes.js";
import { parseLength } from "../../src/input/length.js";

const sixteenths = { unit: "in", denominator: 16 } as const;
const read = (text: string) => parseLength(text, "in")!;

describe("sizes on a drawing", () => {
  it("add up as printed: the span between two marks is the difference of their running sizes", () => {
    const place = fc.double({ min: 0, max: 2000, noNaN: true });
    fc.assert(
      fc.property(place, place, (a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const printed = read(runningSize(to, sixteenths)) - read(runningSize(from, sixteenths));
        expect(read(spanSize(from, to, sixteenths))).toBeCloseTo(printed, 9);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it("would not add up if each were rounded by itself", () => {
    // 0.7 mm is 0.44 of a sixteenth, so 0; 2.4 mm is 1.51, so 2; the 1.7 mm between are 1.07, so 1 by themselves
    expect([runningSize(0.7, sixteenths), runningSize(2.4, sixteenths)]).toEqual(['0"', '1/8"']);
    expect(runningSize(1.7, sixteenths)).toBe('1/16"');
    expect(spanSize(0.7, 2.4, sixteenths)).toBe('1/8"');
  });

  it("round half a step the same way on every part, whichever way the noise of computing leans", () => {
    const half = 8.28125 * 25.4; // 8 1/4" and half a sixteenth
    for (const noise of [-1e-9, 0, 1e-9]) {
      expect(runningSize(half + noise, sixteenths)).toBe('8 5/16"');
      expect(runningSize(-half + noise, sixteenths)).toBe('-8 5/16"');
      expect(spanSize(0, half + noise, sixteenths)).toBe('8 5/16"');
      expect(runningSize(265.75 + noise, { unit: "mm" })).toBe("265.8");
    }
  });

  it("name drills in millimetres with the nearest 64th, since a 16th would be another drill", () => {
    expect(toolSize(2.3, sixteenths)).toBe('2.3 mm (3/32")');
    expect(toolSize(18.2, sixteenths)).toBe('18.2 mm (23/32")');
    expect(toolSize(2.3, { unit: "mm" })).toBe("2.3");
  });

  it("show both units over all where the job shows inches", () => {
    expect(overallSize(1027, sixteenths)).toBe('40 7/16" [1027]');
    expect(sizePair(1027, 847, sixteenths)).toBe('40 7/16" × 33 3/8" [1027 × 847]');
    expect(sizePair(1027, 847, { unit: "mm" })).toBe("1027 × 847");
  });
});
