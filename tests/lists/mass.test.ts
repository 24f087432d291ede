import { describe, expect, it } from "vitest";
import { aboutMass, massOf, pieceMasses } from "../../src/lists/mass.js";
import type { Part } from "../../src/model/part.js";
import { sampleBuild, samplePart } from "../fixtures/build.js";
import { rectangleAt } from "../fixtures/outlines.js";

const build = sampleBuild();

function sheet(length: number, width: number, thickness: number): Part {
  const outer = rectangleAt(0, 0, length, width, ["a", "b", "c", "d"]);
  return { ...samplePart("B2"), thickness, profile: { outer, holes: [] } };
}

describe("mass", () => {
  // length x width x thickness x density at 750 kg/m3, computed; a weight of the trade's 4 x 8 ft sheets
  it.each([
    ["49 x 97 in, 19.05 mm", 49 * 25.4, 97 * 25.4, 19.05, 43.81],
    ["1220 x 2440, 18 mm", 1220, 2440, 18, 40.19],
  ] as const)("of a whole sheet of MDF, %s, is right to 10 g", (_, width, length, thickness, kg) => {
    expect(Math.abs(massOf(sheet(length, width, thickness), build)! - kg)).toBeLessThan(0.01);
  });

  it("of a piece is its panels and its driver", () => {
    const [box] = pieceMasses(build);
    const panels = ["B1", "B2", "B3", "B4", "B5", "B6"].map((number) => massOf(samplePart(number), build)!);
    expect(box).toMatchObject({ piece: "box", driversKg: 4.2, unknown: [] });
    expect(box!.totalKg).toBeCloseTo(
      panels.reduce((sum, kg) => sum + kg, 4.2),
      9,
    );
  });

  it("says what it does not know", () => {
    const { ten, ...others } = build.job.drivers;
    const { massKg: _, ...light } = ten!;
    const job = { ...build.job, drivers: { ...others, ten: light }, boards: {} };
    const [box] = pieceMasses({ ...build, job });
    expect(box!.totalKg).toBe(0);
    expect(box!.unknown).toContain("driver ten");
    expect(box!.unknown).toContain("box top");
  });

  it("is rounded as far as the boards allow", () => {
    expect(aboutMass(31.4, { unit: "mm" })).toBe("about 31.5 kg");
    expect(aboutMass(0.26, { unit: "mm" })).toBe("about 0.3 kg");
    expect(aboutMass(31.4, { unit: "in", denominator: 16 })).toBe("about 69 lb");
  });
});
