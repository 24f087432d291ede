import { describe, expect, it } from "vitest";
import { cornerPoints, roundingsOf } from "../../../src/drawing/dimensions/sharpCorners.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { quarter, rectangleAt } from "../../fixtures/outlines.js";

const at = (x: number, y: number, bulge = 0) => ({ x, y, bulge, by: "" });
/** 100 x 60 with the upper right corner rounded by 10. */
const rounded: Profile = [at(0, 0), at(100, 0), at(100, 50, quarter), at(90, 60), at(0, 60)];

describe("the places that fix an outline", () => {
  it("are x for upright edges and y for level ones: a rectangle has two of each", () => {
    const points = cornerPoints(rectangleAt(5, 7, 100, 60, ["a", "b", "c", "d"]));
    expect(new Set(points.filter(({ x }) => x).map((each) => each.at.x))).toEqual(new Set([5, 105]));
    expect(new Set(points.filter(({ y }) => y).map((each) => each.at.y))).toEqual(new Set([7, 67]));
  });

  it("count a rounded corner as the sharp one, so that no end of an arc is marked out", () => {
    const points = cornerPoints(rounded);
    expect(new Set(points.map((each) => each.at.x))).toEqual(new Set([0, 100]));
    expect(new Set(points.map((each) => each.at.y))).toEqual(new Set([0, 60]));
  });

  it("are both ends, both ways, of a slanting edge", () => {
    const points = cornerPoints([at(0, 0), at(100, 0), at(80, 60), at(0, 60)]);
    expect(points.some(({ at: p, x, y }) => p.x === 80 && p.y === 60 && x && y)).toBe(true);
    expect(points.some(({ at: p, x, y }) => p.x === 100 && p.y === 0 && x && y)).toBe(true);
  });

  it("carry on the edges beside a rounded slanting corner to where they meet", () => {
    // edges y = 0 and the 45 degree line through (100, 0), their corner rounded: tan(22.5 deg) x 10 back along each
    const back = 10 * Math.tan(Math.PI / 8);
    const slant = back / Math.SQRT2;
    const bulge = Math.tan(Math.PI / 16);
    const profile = [at(0, 0), at(100 - back, 0, bulge), at(100 + slant, slant), at(140, 40), at(0, 40)];
    const meets = cornerPoints(profile).filter(({ at: p }) => Math.hypot(p.x - 100, p.y) < 1e-9);
    expect(meets.length).toBeGreaterThan(0);
    expect(roundingsOf(profile)[0]?.radius).toBeCloseTo(10, 9);
  });

  it("find the radius of a rounded corner, and none where an arc meets its edges at an angle", () => {
    expect(roundingsOf(rounded).map(({ radius }) => radius)).toEqual([expect.closeTo(10, 9)]);
    expect(roundingsOf([at(0, 0), at(100, 0, 0.2), at(100, 60), at(0, 60)])).toEqual([]);
  });
});
