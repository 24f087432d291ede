import { describe, expect, it } from "vitest";
import { type Curve, curvesOf } from "../../../src/export/pdf/curves.js";
import type { Point } from "../../../src/geometry/profile.js";

function along(from: Point, [a, b, end]: Curve, t: number): Point {
  const s = 1 - t;
  const mix = (k: "x" | "y") => s ** 3 * from[k] + 3 * s * s * t * a[k] + 3 * s * t * t * b[k] + t ** 3 * end[k];
  return { x: mix("x"), y: mix("y") };
}

describe("arcs as curves", () => {
  it.each([1, -1, 0.2, -3, Math.tan(Math.PI / 8)])("of bulge %d stay within 5 millionths of the radius", (bulge) => {
    // centre and radius from the chord by the definition of the bulge: sagitta = bulge x half the chord
    const half = 50;
    const sagitta = bulge * half;
    const radius = (half ** 2 + sagitta ** 2) / (2 * Math.abs(sagitta));
    const centre = { x: 0, y: Math.sign(bulge) * radius - sagitta };
    let pen: Point = { x: -half, y: 0 };
    for (const curve of curvesOf({ x: -half, y: 0, bulge }, { x: half, y: 0 })) {
      for (const t of [0, 0.1, 0.25, 0.5, 0.8, 1]) {
        const { x, y } = along(pen, curve, t);
        expect(Math.abs(Math.hypot(x - centre.x, y - centre.y) - radius)).toBeLessThan(5e-6 * radius);
      }
      pen = curve[2];
    }
    expect(pen).toEqual({ x: half, y: 0 });
  });

  it("are none for a straight edge", () => {
    expect(curvesOf({ x: 0, y: 0, bulge: 0 }, { x: 1, y: 0 })).toEqual([]);
  });
});
