import fc from "fast-check";
import { expect, it } from "vitest";
import { midpoint } from "../../src/geometry/arc.js";
import { nearestOn } from "../../src/geometry/distance.js";
import { pointInRegion } from "../../src/geometry/inside.js";
import type { Profile } from "../../src/geometry/profile.js";
import { tessellate } from "../../src/geometry/tessellate.js";
import { outlineOf } from "../../src/input/outline.js";
import { gapAt, plateOutline } from "../../src/pieces/plate/outline.js";
import type { PlateSpec } from "../../src/pieces/plate/schema.js";
import { sampleJob } from "../fixtures/jobAndShop.js";

/** An L-shaped floor, so that one corner juts in: two sizes, a step, a radius for each corner, a gap for each side. */
const floors = fc.record({
  width: fc.integer({ min: 700, max: 1600 }),
  depth: fc.integer({ min: 600, max: 1200 }),
  step: fc.tuple(fc.integer({ min: 150, max: 300 }), fc.integer({ min: 150, max: 300 })),
  radii: fc.array(fc.constantFrom(0, 10, 25, 60), { minLength: 6, maxLength: 6 }),
  gaps: fc.array(fc.constantFrom(0, 1, 3, 12.5, 40, 90), { minLength: 6, maxLength: 6 }),
});

const names = ["a", "b", "c", "d", "e", "f"];

function outlineFrom({
  width,
  depth,
  step: [x, y],
  radii,
}: typeof floors extends fc.Arbitrary<infer T> ? T : never): Profile {
  const places = [
    [0, 0],
    [width, 0],
    [width, depth - y],
    [width - x, depth - y],
    [width - x, depth],
    [0, depth],
  ] as const;
  const made = outlineOf(places.map((at, i) => ({ at, round: radii[i], side: names[i] })));
  if ("fault" in made) throw new Error("no outline");
  return made.profile;
}

/** The sides an edge is named after, and those next to them. */
function withNeighbours(by: string): readonly string[] {
  return by.split("|").flatMap((side) => {
    const i = names.indexOf(side);
    return [names[(i + 5) % 6]!, side, names[(i + 1) % 6]!];
  });
}

it("keeps every side of a plate at its own gap, and every corner as far away as the smaller of two", () => {
  fc.assert(
    fc.property(floors, (floor) => {
      const outline = outlineFrom(floor);
      const sides = Object.fromEntries(names.map((name, i) => [name, { gap: floor.gaps[i]! }]));
      const spec = { kind: "plate", board: "plate", outline: "space", height: 0, sides } as PlateSpec;
      const job = sampleJob({ unit: "mm" });
      const placed = { ...job, space: { ...job.space, outline, sides: names } };
      const made = plateOutline(spec, undefined, placed).value;
      expect(made).toHaveLength(1);
      const plate = made![0]!.outer;
      for (const p of tessellate(plate, 0.01)) {
        const near = nearestOn(outline, p)!;
        const inside = pointInRegion({ outer: outline, holes: [] }, p) || near.distance < 1e-6;
        expect(inside).toBe(true);
        // beside a corner the smaller gap of the two sides that meet there is kept
        const least = Math.min(...withNeighbours(near.by).map((side) => gapAt(side, spec)));
        expect(near.distance).toBeGreaterThanOrEqual(least - 0.011);
      }
      plate.forEach((vertex, i) => {
        if (vertex.by.includes("|")) return;
        const middle = midpoint(vertex, plate[(i + 1) % plate.length]!);
        const side = outline.findIndex((edge) => edge.by === vertex.by);
        const [a, b] = [outline[side]!, outline[(side + 1) % outline.length]!];
        const away =
          ((b.x - a.x) * (middle.y - a.y) - (b.y - a.y) * (middle.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);
        expect(away).toBeCloseTo(sides[vertex.by]!.gap, 6);
      });
    }),
    { seed: 11, numRuns: 200 },
  );
});
