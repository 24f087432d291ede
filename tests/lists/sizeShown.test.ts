import { describe, expect, it } from "vitest";
import { sizeShown } from "../../src/lists/sizeShown.js";
import type { Build } from "../../src/model/build.js";
import { sampleBuild } from "../fixtures/build.js";

const stepped = (build: Build, step: number): Build => ({
  ...build,
  shop: { ...build.shop, saw: { ...build.shop.saw, step } },
});
const inMm = sampleBuild();
const inInches = sampleBuild({ unit: "in", denominator: 16 });

describe("a size at the bench", () => {
  it("is shown as the job says where a machine cuts it", () => {
    expect(sizeShown(419.1, "cnc", inMm)).toBe("419.1 mm");
    expect(sizeShown(419.1, "cnc", inInches)).toBe('16 1/2"');
  });

  it("is shown in the unit of the saw's step where it is sawn", () => {
    expect(sizeShown(419.1, "saw", stepped(inMm, 25.4 / 16))).toBe('16 1/2"');
    expect(sizeShown(25.4 * 16.53125, "saw", stepped(inMm, 25.4 / 32))).toBe('16 17/32"');
    expect(sizeShown(419.5, "saw", stepped(inInches, 0.5))).toBe("419.5 mm");
  });
});
