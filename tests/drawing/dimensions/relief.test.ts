import { describe, expect, it } from "vitest";
import { reliefsOf, unrelieved } from "../../../src/drawing/dimensions/relief.js";
import { relieve } from "../../../src/geometry/corners.js";
import { areaOf, extentsOf } from "../../../src/geometry/measure.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { quarter, rectangleAt } from "../../fixtures/outlines.js";

const at = (x: number, y: number, bulge = 0) => ({ x, y, bulge, by: "" });
const opening = rectangleAt(5, 7, 78, 54, ["bottom", "right", "top", "left"]);

describe("relieved corners", () => {
  it.each(["diagonal", "side"] as const)("give back the rectangle that seats in them, bitten %s", (kind) => {
    const bitten = relieve(opening, 3, kind, "outside").profile;
    expect(areaOf(bitten)).toBeGreaterThan(78 * 54 + 10);
    const sharp = unrelieved(bitten);
    expect(areaOf(sharp)).toBeCloseTo(78 * 54, 6);
    expect(extentsOf(sharp)).toEqual({
      min: { x: expect.closeTo(5, 6), y: expect.closeTo(7, 6) },
      max: { x: expect.closeTo(83, 6), y: expect.closeTo(61, 6) },
    });
    expect(new Set(sharp.map(({ by }) => by))).toEqual(new Set(["bottom", "right", "top", "left"]));
  });

  it("have the bit's radius, and stand where the sharp corners would", () => {
    const reliefs = reliefsOf(relieve(opening, 3, "diagonal", "outside").profile);
    expect(reliefs.map(({ radius }) => radius)).toEqual(Array(4).fill(expect.closeTo(3, 6)));
    const corners = reliefs.map(({ corner }) => `${corner.x.toFixed(3)} ${corner.y.toFixed(3)}`);
    expect(new Set(corners)).toEqual(new Set(["5.000 7.000", "83.000 7.000", "83.000 61.000", "5.000 61.000"]));
  });

  it("are found wherever the profile starts", () => {
    const { profile } = relieve(opening, 3, "diagonal", "outside");
    for (let i = 0; i < profile.length; i++) {
      const moved = [...profile.slice(i), ...profile.slice(0, i)];
      expect(areaOf(unrelieved(moved))).toBeCloseTo(78 * 54, 6);
    }
  });

  it.each<readonly [string, Profile]>([
    ["a rounded corner", [at(0, 0), at(100, 0), at(100, 50, quarter), at(90, 60), at(0, 60)]],
    ["a slot", [at(0, 0), at(40, 0, 1), at(40, 10), at(0, 10, 1)]],
    ["an arched top", [at(0, 0), at(100, 0), at(100, 60, 0.2), at(0, 60)]],
    ["a bow that stops short of the corner", [at(0, 0), at(100, 0), at(100, 40, 0.1), at(80, 60), at(0, 60)]],
  ])("are not seen in %s", (_, profile) => {
    expect(reliefsOf(profile)).toEqual([]);
    expect(unrelieved(profile)).toEqual(profile);
  });
});
