import { describe, expect, it } from "vitest";
import { editDistance, nearest } from "../../src/input/nearest.js";

describe("nearest", () => {
  it.each([
    ["mdf18", ["mdf-12", "mdf-18"], "mdf-18"],
    ["cutout", ["frame", "cut-out", "bolts"], "cut-out"],
    ["heigth", ["width", "height"], "height"],
    ["Battery", ["battery"], "battery"],
    ["driver", ["drivers", "driver"], "driver"],
    ["boxx", ["box", "boxes"], "box"],
  ])("takes %s for a slip of one of %j", (name, candidates, meant) => {
    expect(nearest(name, candidates)).toBe(meant);
  });

  it.each([
    ["subwoofer", ["plate", "ring"]],
    ["a", ["b"]],
    ["width", ["height"]],
    ["", ["x"]],
    ["plate", []],
  ])("finds nothing close to %j among %j", (name, candidates) => {
    expect(nearest(name, candidates)).toBeUndefined();
  });

  // F. J. Damerau, Communications of the ACM 7(3), 1964: one letter more, less, other, or two swapped. From memory.
  it("counts a swap of neighbours as one slip", () => {
    expect(editDistance("ab", "ba")).toBe(1);
    expect(editDistance("ca", "abc")).toBe(3); // the textbook case that tells the restricted form from the full one
    expect(editDistance("kitten", "sitting")).toBe(3);
    expect(editDistance("", "abc")).toBe(3);
  });

  it("does not spend time on very long texts", () => {
    expect(nearest("x".repeat(1e6), ["y"])).toBeUndefined();
  });
});
