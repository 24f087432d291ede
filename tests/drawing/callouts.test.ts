import { describe, expect, it } from "vitest";
import { calloutsOf, letterOf } from "../../src/drawing/callouts.js";
import { distanceFromEdge } from "../../src/drawing/grooveDistance.js";
import type { Cut } from "../../src/model/part.js";
import { samplePart } from "../fixtures/build.js";
import { sampleAxes } from "../fixtures/parts.js";

const mm = { unit: "mm" } as const;
const listed = (number: string) =>
  calloutsOf(samplePart(number), sampleAxes, mm).map(({ letter, features, size, words }) => [
    letter,
    features.length,
    size,
    words,
  ]);

describe("what a part's features are called", () => {
  it("gathers holes that are cut alike for the same end, openings first", () => {
    expect(listed("B1")).toEqual([
      ["A", 1, "⌀233", "opening, for driver ten"],
      ["B", 8, "⌀2.3", "through, on ⌀248, first 22.5° above 3 o'clock, for driver ten"],
      ["C", 6, "⌀9", "14 deep, threaded insert for M6 x 25 button black"],
      ["D", 4, "⌀4.5", "through, clearance for 4.0 x 50 screw"],
    ]);
  });

  it("says how deep a recess is, which edge work there is and when it is done", () => {
    expect(listed("R1").slice(1, 3)).toEqual([
      ["B", 1, "⌀263", "recess, 7 deep"],
      ["C", 1, "8 × 45°", "chamfer, face edge, on the loose part"],
    ]);
  });

  it("says that a hole runs into the edge and how far below the face", () => {
    expect(listed("B3")).toEqual([
      ["A", 2, "⌀2.3", "33 deep, into the edge, 9.1 below the face, pilot for 4.0 x 50 screw"],
    ]);
  });

  it("leaves out the letters that read as figures and goes on after Z", () => {
    const letters = Array.from({ length: 26 }, (_, i) => letterOf(i));
    expect(letters).not.toContain("I");
    expect(letters).not.toContain("O");
    expect(letters.slice(23)).toEqual(["Z", "AA", "AB"]);
  });
});

describe("a groove", () => {
  const plate = samplePart("P1");
  const groove = plate.features.map(({ cut }) => cut).find((cut) => cut.kind === "groove")!;

  it("that follows the edge is told by its distance", () => {
    expect(distanceFromEdge(groove, plate)).toBeCloseTo(40, 6);
  });

  it("that leaves it is not", () => {
    const straight: Cut = { ...groove, closed: false, path: [groove.path[0]!, { ...groove.path[5]!, bulge: 0 }] };
    expect(distanceFromEdge(straight, plate)).toBeUndefined();
  });
});
