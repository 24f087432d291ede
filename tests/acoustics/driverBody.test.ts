import { describe, expect, it } from "vitest";
import { driverBodyL } from "../../src/acoustics/driverBody.js";
import { frustumL } from "../../src/acoustics/frustum.js";

const sheet = { cutOut: 233, depth: 96, magnet: 150, magnetDepth: 30 };

describe("the body of a driver", () => {
  it("is one frustum where the magnet's depth is not told", () => {
    const { magnetDepth: _, ...short } = sheet;
    expect(driverBodyL(short)).toBeCloseTo(frustumL(233, 150, 96), 12);
  });

  it("takes less the deeper it stands in the board, and nothing once it stands there whole", () => {
    const taken = [0, 18, 36, 66, 80, 96, 120].map((inBoard) => driverBodyL(sheet, inBoard));
    for (const [index, litres] of taken.slice(1).entries()) expect(litres).toBeLessThanOrEqual(taken[index]!);
    expect(taken.slice(-2)).toEqual([0, 0]);
  });

  it("loses just what the board hides: in front of the magnet, and within it", () => {
    const at20 = 233 + ((150 - 233) * 20) / 66;
    expect(driverBodyL(sheet) - driverBodyL(sheet, 20)).toBeCloseTo(frustumL(233, at20, 20), 12);
    expect(driverBodyL(sheet, 76)).toBeCloseTo(frustumL(150, 150, 20), 12);
  });

  it("that is all magnet is a cylinder", () => {
    expect(driverBodyL({ cutOut: 160, depth: 40, magnet: 150, magnetDepth: 40 })).toBeCloseTo(
      frustumL(150, 150, 40),
      12,
    );
  });
});
