import { describe, expect, it } from "vitest";
import type { Vector } from "../../src/geometry/frame.js";
import { distanceOfSegments } from "../../src/geometry/solids-segments.js";

const cases: readonly (readonly [string, Vector, Vector, Vector, Vector, number])[] = [
  ["skew and crossing in plan", [-5, 0, 0], [5, 0, 0], [0, -5, 3], [0, 5, 3], 3],
  ["meeting", [-5, 0, 0], [5, 0, 0], [0, -5, 0], [0, 5, 0], 0],
  ["parallel and side by side", [0, 0, 0], [10, 0, 0], [2, 4, 0], [8, 4, 0], 4],
  ["parallel and behind each other", [0, 0, 0], [10, 0, 0], [13, 4, 0], [20, 4, 0], 5],
  ["nearest at an end of one", [0, 0, 0], [10, 0, 0], [4, 3, 0], [4, 9, 0], 3],
  ["nearest at an end of both", [0, 0, 0], [10, 0, 0], [13, 4, 0], [13, 9, 0], 5],
  ["one a point", [0, 0, 0], [10, 0, 0], [4, 3, 4], [4, 3, 4], 5],
  ["both points", [0, 0, 0], [0, 0, 0], [1, 2, 2], [1, 2, 2], 3],
];

describe("the distance of two straight pieces", () => {
  it.each(cases)("is right where they are %s", (_, p, q, r, s, expected) => {
    expect(distanceOfSegments(p, q, r, s)).toBeCloseTo(expected, 12);
    expect(distanceOfSegments(s, r, q, p)).toBeCloseTo(expected, 12);
  });
});
