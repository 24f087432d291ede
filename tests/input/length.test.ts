import { describe, expect, it } from "vitest";
import { type LengthUnit, lengthPattern, parseLength, parseSize, sizePattern } from "../../src/input/length.js";

const read: readonly (readonly [string, LengthUnit, number])[] = [
  ["18", "mm", 18],
  ["18", "cm", 180],
  ["18", "in", 457.2],
  ["18mm", "in", 18],
  ["18 MM", "mm", 18],
  ["29.5cm", "mm", 295],
  ["1.2 m", "mm", 1200],
  [".5in", "mm", 12.7],
  ["3/4in", "mm", 19.05],
  ["3/4", "in", 19.05],
  ['11 5/8"', "mm", 295.275],
  ["11-5/8 in", "mm", 295.275],
  ["11½”", "mm", 292.1],
  ["¾ inch", "mm", 19.05],
  ["11 5⁄8 in.", "mm", 295.275],
  ["2 ft", "mm", 609.6],
  ["1 foot", "mm", 304.8],
  ["1'-2 1/2\"", "mm", 368.3],
  ["1’ 2½″", "mm", 368.3],
  ["1' 2", "mm", 355.6],
  ["1'-2''", "mm", 355.6],
  ["5 ft 3 1/2 in", "mm", 1612.9],
  ["29,5", "mm", 29.5],
  ["-12", "mm", -12],
  ["−3/4in", "mm", -19.05],
  ["+4", "mm", 4],
  ["  7 mm ", "mm", 7],
];

const refused: readonly (readonly [string, LengthUnit])[] = [
  ["", "mm"],
  ["   ", "mm"],
  ["wide", "mm"],
  ["18 mn", "mm"],
  ["3/4", "mm"],
  ["3/0in", "mm"],
  ["1,234", "mm"],
  ["1e3", "mm"],
  ["0x10", "mm"],
  ["1 2 3", "mm"],
  ["12 mm 3", "mm"],
  ["1.5' 2\"", "mm"],
  ["- 5", "mm"],
  ["NaN", "mm"],
  ["9".repeat(400), "mm"],
];

describe("parseLength", () => {
  it.each(read)("reads %j where bare numbers are %s", (text, unit, mm) => {
    expect(parseLength(text, unit)).toBe(mm);
  });

  it.each(refused)("refuses %j where bare numbers are %s", (text, unit) => {
    expect(parseLength(text, unit)).toBeUndefined();
  });

  it("takes exactly the texts that its pattern takes, but for numbers without end", () => {
    for (const [text, unit] of read) expect(new RegExp(lengthPattern(unit)).test(text)).toBe(true);
    for (const [text, unit] of refused.filter(([text]) => text.length < 100)) {
      expect(new RegExp(lengthPattern(unit)).test(text)).toBe(false);
    }
  });

  it("answers a long text of nonsense at once", () => {
    const begun = performance.now();
    expect(parseLength(`${"1 ".repeat(20_000)}x`, "mm")).toBeUndefined();
    expect(performance.now() - begun).toBeLessThan(5000);
  });
});

describe("parseSize", () => {
  it.each([
    ["78 x 54", 78, 54],
    ["78x54mm", 78, 54],
    ["78 × 54", 78, 54],
    ["3/4in x 2in", 19.05, 50.8],
    ["3/4 x 2in", 19.05, 50.8],
    ['3 x 2"', 76.2, 50.8],
    ["29.5cm x 3in", 295, 76.2],
  ])("reads %j", (text, across, along) => {
    expect(parseSize(text, "mm")).toEqual([across, along]);
    expect(new RegExp(sizePattern("mm")).test(text)).toBe(true);
  });

  it.each(["78", "78 x", "x 54", "3/4 x 2", "78 x 54 x 3", "78 by 54"])("refuses %j", (text) => {
    expect(parseSize(text, "mm")).toBeUndefined();
    expect(new RegExp(sizePattern("mm")).test(text)).toBe(false);
  });
});
