import { describe, expect, it } from "vitest";
import { exactSize } from "../../src/drawing/sizes.js";
import { fitWords, sizesToFit } from "../../src/drawing/toFit.js";
import type { Build } from "../../src/model/build.js";
import type { Part } from "../../src/model/part.js";
import { sampleBuild } from "../fixtures/build.js";

const inch = 25.4;
const build = sampleBuild();
const wall = build.plan.built.parts.find(({ number }) => number === "B3")!;

/** The starter's sawn wall with this outline, glued along the edges named. */
function between(width: number, height: number, glued: readonly string[]): Part {
  const at = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  const names = ["low", "right", "high", "left"];
  const outer = at.map(([x, y], i) => ({ x, y, bulge: 0, by: names[i]! }));
  const joint = { bevel: 0, flush: 0, finish: { kind: "joint", joint: "some" } } as const;
  return { ...wall, profile: { outer, holes: [] }, edges: Object.fromEntries(glued.map((name) => [name, joint])) };
}
const sixteenths: Build = { ...build, shop: { ...build.shop, saw: { ...build.shop.saw, step: inch / 16 } } };

describe("a sawn size off the step", () => {
  it("is cut to fit where it stands between what it is glued to, and told by its fraction and what remains", () => {
    const part = between(23.88 * inch, 5.25 * inch, ["left", "right", "low"]);
    expect(sizesToFit(part, sixteenths)).toEqual([23.88 * inch]);
    // 23 7/8" is 606.425 mm
    expect(fitWords(part, sixteenths)).toBe('cut to fit: 23 7/8" + 0.1 mm');
  });

  it("is told under its fraction where that is nearer", () => {
    expect(exactSize(5.99 * inch, { unit: "in", denominator: 16 })).toBe('6" - 0.3 mm');
    expect(exactSize(606.552, { unit: "mm" })).toBe("606.6 mm");
  });

  it("is not cut to fit where it ends free, nor on a step", () => {
    expect(sizesToFit(between(23.88 * inch, 5.25 * inch, ["left", "low"]), sixteenths)).toEqual([]);
    expect(sizesToFit(between(23.875 * inch, 5.25 * inch, ["left", "right"]), sixteenths)).toEqual([]);
  });
});
