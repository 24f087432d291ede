import { areaPathsD, differenceD, FillRule } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { turned } from "../../src/geometry/transform.js";
import { type UsableRectangle, usableRectangle } from "../../src/nest/usableRectangle.js";

const outline = (points: readonly (readonly [number, number])[]) =>
  polygon(
    points.map(([x, y]) => ({ x, y })),
    (i) => `side.${i + 1}`,
  );
const sizes = (found: UsableRectangle | undefined) =>
  found && [found.length, found.width].map((v) => Math.round(v * 1e4) / 1e4);

describe("what a saw has of an odd offcut", () => {
  it("is all of a rectangle, from whichever side", () => {
    const whole = rectangle(0, 0, 800, 300, ["bottom", "right", "top", "left"]);
    expect(sizes(usableRectangle(whole, "bottom"))).toEqual([800, 300]);
    expect(sizes(usableRectangle(whole, "right"))).toEqual([300, 800]);
    expect(usableRectangle(whole, "top")).toMatchObject({ x: 800, y: 300 });
    expect(Math.abs(usableRectangle(whole, "top")!.turn)).toBeCloseTo(Math.PI, 12);
  });

  it("is the half square under a slant: of a right triangle's leg half of its area", () => {
    // b x h / 4, at half of both legs: elementary calculus
    expect(
      sizes(
        usableRectangle(
          outline([
            [0, 0],
            [400, 0],
            [0, 300],
          ]),
          "side.1",
        ),
      ),
    ).toEqual([200, 150]);
    // on the long side of a 3-4-5 triangle too: half of 500 by half of its height 240
    expect(
      sizes(
        usableRectangle(
          outline([
            [0, 0],
            [400, 0],
            [0, 300],
          ]),
          "side.2",
        ),
      ),
    ).toEqual([250, 120]);
  });

  it("is the larger leg of an angle, whichever lies on the side", () => {
    const angle = outline([
      [0, 0],
      [900, 0],
      [900, 200],
      [250, 200],
      [250, 600],
      [0, 600],
    ]);
    expect(sizes(usableRectangle(angle, "side.1"))).toEqual([900, 200]);
    expect(sizes(usableRectangle(angle, "side.6"))).toEqual([200, 900]);
    expect(sizes(usableRectangle(angle, "side.4"))).toEqual([400, 250]);
  });

  it("keeps clear of knots, on the side and above it", () => {
    const whole = rectangle(0, 0, 800, 300, "edge");
    expect(sizes(usableRectangle(whole, "edge", [rectangle(200, 100, 240, 140, "knot")]))).toEqual([560, 300]);
    expect(sizes(usableRectangle(whole, "edge", [rectangle(-10, -10, 300, 320, "knot")]))).toEqual([500, 300]);
    expect(usableRectangle(whole, "edge", [rectangle(-10, -10, 900, 400, "knot")])).toBeUndefined();
  });

  it("is none on a side that is bowed or not there", () => {
    expect(usableRectangle(circle({ x: 0, y: 0 }, 100, "edge"), "edge")).toBeUndefined();
    expect(usableRectangle(rectangle(0, 0, 8, 3, "edge"), "side.9")).toBeUndefined();
  });

  it("lies within the outline and is no smaller than any rectangle tried on the same side", () => {
    const radius = fc.integer({ min: 40, max: 200 });
    fc.assert(
      fc.property(fc.array(radius, { minLength: 3, maxLength: 9 }), fc.nat(360), (radii, degrees) => {
        const points = radii.map((r, i): Point => {
          const angle = (2 * Math.PI * i) / radii.length;
          return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
        });
        const star = turned(
          polygon(points, (i) => `side.${i + 1}`),
          (degrees * Math.PI) / 180,
        );
        const found = usableRectangle(star, "side.1");
        const inside = (r: UsableRectangle) =>
          areaPathsD(differenceD([cornersOf(r)], [star.map(({ x, y }) => ({ x, y }))], FillRule.NonZero, 6));
        if (found !== undefined) expect(inside(found)).toBeLessThan(1e-3);
        const [a, b] = [star[0]!, star[1]!];
        const base = Math.hypot(b.x - a.x, b.y - a.y);
        const turn = Math.atan2(b.y - a.y, b.x - a.x);
        for (const [from, to] of [
          [0, 1],
          [0, 0.5],
          [0.5, 1],
          [0.25, 0.75],
          [0.1, 0.6],
        ] as const)
          for (const width of [10, 30, 60, 120]) {
            const tried = {
              x: a.x + (b.x - a.x) * from,
              y: a.y + (b.y - a.y) * from,
              turn,
              length: base * (to - from),
              width,
            };
            if (inside(tried) < 1e-6)
              expect(tried.length * width).toBeLessThanOrEqual((found ? found.length * found.width : 0) + 1e-3);
          }
      }),
      { seed: 411, numRuns: 150 },
    );
  });
});

function cornersOf({ x, y, turn, length, width }: UsableRectangle): Point[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ].map(([u, v]) => ({ x: x + c * u! - s * v!, y: y + s * u! + c * v! }));
}
