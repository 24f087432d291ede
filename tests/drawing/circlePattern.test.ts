import { describe, expect, it } from "vitest";
import { circlePattern } from "../../src/drawing/circlePattern.js";
import { onCircle } from "../fixtures/outlines.js";

describe("holes on a circle", () => {
  it("are found about the middle of an opening, with diameter and first angle, in any order", () => {
    const holes = onCircle(210, 200, 248, 8, Math.PI / 8);
    const found = circlePattern([...holes.slice(3), ...holes.slice(0, 3)], [{ x: 210, y: 200 }]);
    expect(found?.d).toBeCloseTo(248, 9);
    expect(found?.start).toBeCloseTo(Math.PI / 8, 9);
  });

  it("start at nothing when the first lies on the x axis, whatever the noise", () => {
    const found = circlePattern(onCircle(0, 0, 100, 6, -1e-13), [{ x: 0, y: 0 }]);
    expect(found?.start).toBe(0);
  });

  it("are no pattern when one is missing, moved, or the circle has no middle to go by", () => {
    const holes = onCircle(0, 0, 248, 8, 0);
    expect(circlePattern(holes.slice(1), [{ x: 0, y: 0 }])).toBeUndefined();
    const moved = holes.map((p, i) => (i === 2 ? { x: p.x, y: p.y + 0.5 } : p));
    expect(circlePattern(moved, [{ x: 0, y: 0 }])).toBeUndefined();
    expect(circlePattern(holes, [{ x: 5, y: 0 }])).toBeUndefined();
    expect(circlePattern(holes.slice(0, 2), [{ x: 0, y: 0 }])).toBeUndefined();
  });
});
