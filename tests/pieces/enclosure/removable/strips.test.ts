import { describe, expect, it } from "vitest";
import { identity } from "../../../../src/geometry/frame.js";
import { areaOf } from "../../../../src/geometry/measure.js";
import { polygon, rectangle } from "../../../../src/geometry/shapes.js";
import { openingWithin, stripsAlong } from "../../../../src/pieces/enclosure/removable/strips.js";

const sheet = (outline: ReturnType<typeof polygon>, bevels: Readonly<Record<string, number>> = {}) => {
  return { frame: identity, outline, bevels, thickness: 0 };
};
const ell = polygon(
  [
    [0, 0],
    [300, 0],
    [300, 100],
    [120, 100],
    [120, 250],
    [0, 250],
  ].map(([x, y]) => ({ x: x!, y: y! })),
  (i) => `wall ${i}`,
);
const square = rectangle(0, 0, 200, 100, ["rear", "right", "front", "left"]);

describe("strips along the edges of an outline", () => {
  it("fill all of it but the opening, round a corner that goes in too", () => {
    const widths = () => 20;
    const strips = stripsAlong(sheet(ell), widths, 18, "batten")!;
    const filled = strips.reduce((sum, strip) => sum + areaOf(strip.sheet.outline), 0);
    expect(strips).toHaveLength(6);
    expect(filled + areaOf(openingWithin(sheet(ell), widths)!)).toBeCloseTo(areaOf(ell), 9);
  });

  it("leave out the edges where there are to be none, and end there", () => {
    const strips = stripsAlong(sheet(square), (by) => (by === "right" ? 0 : 20), 18, "batten")!;
    expect(strips.map(({ along, sheet: { outline } }) => [along, areaOf(outline) / 20])).toEqual([
      ["rear", 180],
      ["front", 200],
      ["left", 80],
    ]);
  });

  it("lean with the wall they lie along", () => {
    const [rear] = stripsAlong(sheet(square, { rear: 0.3 }), () => 20, 18, "batten")!;
    expect(rear!.sheet.bevels).toEqual({ rear: 0.3 });
  });

  it("are none where they meet, or where a leaning wall leaves nothing of one at its back", () => {
    expect(openingWithin(sheet(square), () => 49.6)).toBeUndefined();
    expect(openingWithin(sheet(square), () => 49.4)).toBeDefined();
    expect(stripsAlong(sheet(square, { rear: Math.PI / 4 }), () => 20, 20, "batten")).toBeUndefined();
  });
});
