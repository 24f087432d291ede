import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FaceName, faceNames, type Span } from "../../../src/pieces/enclosure/faces.js";
import { lapsOver, panelsOf } from "../../../src/pieces/enclosure/panels.js";

const volume = ({ min, max }: Span) => min.reduce((product, low, axis) => product * (max[axis]! - low), 1);

/** Volume that two blocks share. */
function shared(a: Span, b: Span): number {
  return [0, 1, 2].reduce(
    (product, axis) =>
      product * Math.max(0, Math.min(a.max[axis]!, b.max[axis]!) - Math.max(a.min[axis]!, b.min[axis]!)),
    1,
  );
}

const orders = fc.shuffledSubarray([...faceNames], { minLength: 6, maxLength: 6 });
const sizes = fc.tuple(
  fc.integer({ min: 100, max: 900 }),
  fc.integer({ min: 100, max: 900 }),
  fc.integer({ min: 100, max: 900 }),
);
const thicknesses = fc.constantFrom(9, 12, 12.7, 15.9, 18, 18.2, 19.05, 25);
const seeded = { seed: 7, numRuns: 300 };

describe("panels of a box", () => {
  it("fill the shell exactly once, whoever laps whom", () => {
    fc.assert(
      fc.property(sizes, thicknesses, orders, (outside, t, laps) => {
        const { spans } = panelsOf(outside, t, laps);
        const [w, d, h] = outside;
        const shell = w * d * h - (w - 2 * t) * (d - 2 * t) * (h - 2 * t);
        const sum = faceNames.reduce((total, name) => total + volume(spans[name]), 0);
        expect(sum / shell).toBeCloseTo(1, 9);
        for (const a of faceNames) for (const b of faceNames) if (a < b) expect(shared(spans[a], spans[b])).toBe(0);
      }),
      seeded,
    );
  });

  it("leave walls between at whole steps, and lapping panels never short and less than a step proud", () => {
    fc.assert(
      fc.property(sizes, thicknesses, orders, fc.constantFrom(0.5, 1, 25.4 / 16, 25.4 / 32), (asked, t, laps, step) => {
        const { outside, spans } = panelsOf(asked, t, laps, step);
        for (const name of faceNames) {
          for (const axis of [0, 1, 2] as const) {
            const length = spans[name].max[axis] - spans[name].min[axis];
            if (Math.abs(length - t) < 1e-9) continue; // its own thickness
            expect(Math.abs(length / step - Math.round(length / step))).toBeLessThan(1e-6);
            const proud = Math.max(-spans[name].min[axis], spans[name].max[axis] - outside[axis]);
            expect(proud).toBeLessThan(step);
          }
        }
        for (const axis of [0, 1, 2] as const)
          expect(Math.abs(outside[axis] - asked[axis])).toBeLessThanOrEqual(step / 2 + 1e-9);
        for (const a of faceNames)
          for (const b of faceNames) if (a < b) expect(shared(spans[a], spans[b])).toBeLessThan(1e-6);
      }),
      seeded,
    );
  });

  it("give the walls of one height one length, so that one fence setting cuts them all", () => {
    const laps: readonly FaceName[] = ["top", "bottom", "front", "rear", "left", "right"];
    const { spans } = panelsOf([534, 420, 150], 18.2, laps, 0.5);
    const heights = (["front", "rear", "left", "right"] as const).map(
      (name) => spans[name].max[2] - spans[name].min[2],
    );
    // 150 - 2 x 18.2 = 113.6, to the nearest half millimetre
    for (const height of heights) expect(height).toBeCloseTo(113.5, 9);
    // the sides stand between front and rear: 420 - 36.4 = 383.6
    expect(spans.left.max[1] - spans.left.min[1]).toBeCloseTo(383.5, 9);
    // the box as built: 383.5 + 36.4 = 419.9; its top is cut at the next half millimetre
    expect(spans.top.max[1] - spans.top.min[1]).toBeCloseTo(420, 9);
  });

  it("know who laps whom", () => {
    expect(lapsOver("top", "left", faceNames)).toBe(true);
    expect(lapsOver("right", "front", faceNames)).toBe(false);
  });
});
