import { describe, expect, it } from "vitest";
import { areaOf } from "../../../../src/geometry/measure.js";
import { polygon, rectangle } from "../../../../src/geometry/shapes.js";
import { lineAcross } from "../../../../src/pieces/enclosure/chambers/across.js";
import { chordOf, leftPart, reversed } from "../../../../src/pieces/enclosure/chambers/section.js";

const square = rectangle(0, 0, 300, 200, ["bottom", "right", "top", "left"]);
const stepped = polygon(
  [
    { x: 0, y: 100 },
    { x: 100, y: 100 },
    { x: 100, y: 0 },
    { x: 200, y: 0 },
    { x: 200, y: 300 },
    { x: 0, y: 300 },
  ],
  (i) => ["over", "step", "bottom", "front", "top", "rear"][i]!,
);

describe("a section cut by a line", () => {
  it("falls into two parts whose areas sum to the whole, each edge with its wall's name and the cut with its own", () => {
    const line = lineAcross("x", 120);
    const [below, above] = [leftPart(square, line, "divider"), leftPart(square, reversed(line), "divider")];
    expect(areaOf(below)).toBeCloseTo(120 * 200, 9);
    expect(areaOf(above)).toBeCloseTo(180 * 200, 9);
    expect(below.map(({ by }) => by).sort()).toEqual(["bottom", "divider", "left", "top"]);
    expect(above.map(({ by }) => by).sort()).toEqual(["bottom", "divider", "right", "top"]);
  });

  it("says by which walls the line comes in and goes out", () => {
    const names = (chord: { start: number; end: number } | undefined) =>
      chord && [square[chord.start]!.by, square[chord.end]!.by];
    expect(names(chordOf(square, lineAcross("x", 10)))).toEqual(["bottom", "top"]);
    expect(names(chordOf(square, lineAcross("y", 10)))).toEqual(["right", "left"]);
  });

  it("has no chord where the line misses it or runs through it twice", () => {
    expect(chordOf(square, lineAcross("x", 301))).toBeUndefined();
    expect(chordOf(stepped, lineAcross("y", 200))).toBeDefined();
    const bay = polygon(
      [
        { x: 0, y: 0 },
        { x: 300, y: 0 },
        { x: 300, y: 100 },
        { x: 200, y: 100 },
        { x: 200, y: 50 },
        { x: 100, y: 50 },
        { x: 100, y: 100 },
        { x: 0, y: 100 },
      ],
      "wall",
    );
    expect(chordOf(bay, lineAcross("y", 75))).toBeUndefined();
  });
});
