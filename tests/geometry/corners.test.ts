import { describe, expect, it } from "vitest";
import { chamferCorners, fillet, relieve } from "../../src/geometry/corners.js";
import { insideCorners } from "../../src/geometry/insideCorners.js";
import { areaOf, extentsOf } from "../../src/geometry/measure.js";
import type { Profile } from "../../src/geometry/profile.js";
import { polygon, rectangle } from "../../src/geometry/shapes.js";

const at = (x: number, y: number) => ({ x, y });
const plate = rectangle(0, 0, 100, 60, ["bottom", "right", "top", "left"]);
const notched = polygon(
  [at(0, 0), at(100, 0), at(100, 60), at(70, 60), at(70, 30), at(30, 30), at(30, 60), at(0, 60)],
  (i) => `e${i}`,
);

describe("rounded corners", () => {
  it("lose the square less the quarter disc each", () => {
    const { profile, refused } = fillet(plate, 10);
    expect(refused).toEqual([]);
    expect(areaOf(profile)).toBeCloseTo(6000 - (4 - Math.PI) * 100, 9);
    expect(profile.map((v) => v.by)).toContain("bottom|right");
  });

  it("gain it where they are hollow", () => {
    const { profile } = fillet(notched, 5, { corners: "inside" });
    expect(areaOf(profile)).toBeCloseTo(areaOf(notched) + 2 * (1 - Math.PI / 4) * 25, 9);
    expect(insideCorners({ outer: profile, holes: [] }).map((c) => c.radius)).toEqual([
      expect.closeTo(5, 9),
      expect.closeTo(5, 9),
    ]);
  });

  it("may meet in the middle of an edge, and name the corners where they would overrun it", () => {
    expect(fillet(plate, 30).refused).toEqual([]);
    const { profile, refused } = fillet(plate, 30.001);
    expect(refused).toHaveLength(4);
    expect(refused[0]).toMatchObject({ index: 0, at: at(0, 0), by: "left|bottom", size: 30.001 });
    expect(profile).toEqual(plate);
  });

  it("run smoothly into an arc", () => {
    const bow: Profile = [
      { x: -50, y: 0, bulge: 0, by: "flat" },
      { x: 50, y: 0, bulge: 0.5, by: "bow" },
    ];
    const { profile, refused } = fillet(bow, 4);
    expect(refused).toEqual([]);
    expect(profile).toHaveLength(4);
    // no sharp place is left: each corner's own turn is gone
    expect(fillet(profile, 1).profile).toEqual(profile);
  });
});

describe("chamfered corners", () => {
  it("lose a triangle each", () => {
    expect(areaOf(chamferCorners(plate, 8).profile)).toBeCloseTo(6000 - 4 * 32, 9);
    expect(chamferCorners(plate, 31).refused).toHaveLength(4);
    expect(areaOf(chamferCorners(plate, (i) => (i === 2 ? 8 : 0)).profile)).toBeCloseTo(6000 - 32, 9);
  });
});

describe("relieved corners", () => {
  it("reach into the corner by half a disc less the triangle that was open already", () => {
    const { profile, refused } = relieve(notched, 3, "diagonal");
    expect(refused).toEqual([]);
    // in a square corner the circle cuts both edges 2 r cos 45 degrees away: half a disc less nothing of the corner but
    // the right triangle between those places and the corner
    expect(areaOf(profile)).toBeCloseTo(areaOf(notched) - 2 * ((Math.PI * 9) / 2 - 9), 6);
    const reached = profile.some((v, i) => {
      const next = profile[(i + 1) % profile.length]!;
      const mid = {
        x: (v.x + next.x) / 2 + ((next.y - v.y) * v.bulge) / 2,
        y: (v.y + next.y) / 2 - ((next.x - v.x) * v.bulge) / 2,
      };
      return Math.hypot(mid.x - 30, mid.y - 30) < 1e-6;
    });
    expect(reached).toBe(true);
  });

  it("take half a disc from the longer edge alone", () => {
    const { profile } = relieve(notched, 3, "side");
    expect(areaOf(profile)).toBeCloseTo(areaOf(notched) - 2 * ((Math.PI * 9) / 2), 6);
    expect(extentsOf(profile)).toEqual(extentsOf(notched));
  });

  it("bite outwards from a hole", () => {
    const hole = relieve(rectangle(0, 0, 40, 20, "opening"), 3, "diagonal", "outside");
    expect(areaOf(hole.profile)).toBeCloseTo(800 + 4 * ((Math.PI * 9) / 2 - 9), 6);
  });

  it("are refused where an edge is shorter than the bite", () => {
    // 2 r sin 45 degrees on each end of a floor of 40
    expect(relieve(notched, 14, "diagonal").refused).toHaveLength(0);
    expect(relieve(notched, 14.2, "diagonal").refused).toHaveLength(2);
    expect(relieve(notched, 15.1, "side").refused).toHaveLength(2);
  });
});

describe("inside corners", () => {
  it("are the sharp hollows of the outer and every corner of a square hole", () => {
    const found = insideCorners({ outer: notched, holes: [rectangle(5, 5, 15, 15, "hole")] });
    expect(found.filter((c) => c.radius === 0)).toHaveLength(6);
    expect(found.map((c) => c.by).sort()).toEqual(["e3|e4", "e4|e5", "hole", "hole", "hole", "hole"]);
  });
});
