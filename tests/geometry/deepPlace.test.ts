import { describe, expect, it } from "vitest";
import { deepPlace } from "../../src/geometry/deepPlace.js";
import { nearestOn } from "../../src/geometry/distance.js";
import { pointInProfile } from "../../src/geometry/inside.js";
import { polygon, rectangle } from "../../src/geometry/shapes.js";

describe("a place well inside a profile", () => {
  it("is the middle of a rectangle, as far as a grid of nine knows it", () => {
    const { x, y } = deepPlace(rectangle(10, 20, 210, 50, "side"));
    expect(y).toBeCloseTo(35, 9);
    expect(Math.min(x - 10, 210 - x)).toBeGreaterThan(15 - 1e-9);
  });

  it("lies in one arm of an angle, whose middle is outside", () => {
    const angle = polygon(
      [
        { x: 0, y: 0 },
        { x: 300, y: 0 },
        { x: 300, y: 40 },
        { x: 40, y: 40 },
        { x: 40, y: 300 },
        { x: 0, y: 300 },
      ],
      "angle",
    );
    const place = deepPlace(angle);
    expect(pointInProfile(angle, place)).toBe(true);
    expect(nearestOn(angle, place)!.distance).toBeGreaterThan(10);
  });
});
