import { describe, expect, it } from "vitest";
import { readMeasure } from "../../src/input/measure.js";
import { volume } from "../../src/input/measures.js";
import { rules } from "../../src/shop/rules.js";
import { starterShop } from "../../src/shop/starter.js";

// The built-in tables against published values and worked examples.

const { boards, bolts, screws } = starterShop();

/** Weight of a sheet, kg: length x width x thickness x density. */
function weight(name: string, length: number, width: number): number {
  const board = boards[name]!;
  const sheet = board.sheets.find(
    (each) => Math.abs(each.length - length) < 1e-9 && Math.abs(each.width - width) < 1e-9,
  );
  return (sheet!.length * sheet!.width * board.thickness * board.density) / 1e9;
}

describe("sheets", () => {
  // Computed from length x width x thickness x density; the densities lie inside published ranges for MDF and birch.
  it.each([
    ["mdf-3/4", 97 * 25.4, 49 * 25.4, 43.81],
    ["mdf-18", 2440, 1220, 40.19],
    ["birch-18", 1525, 1525, 28.47],
    ["birch-12", 1525, 1525, 18.98],
    ["mdf-1/4", 97 * 25.4, 49 * 25.4, 14.6],
    ["mdf-1/2", 97 * 25.4, 61 * 25.4, 36.36],
  ])("of %s weigh what they should", (name, length, width, kg) => {
    expect(Math.abs(weight(name, length, width) - kg)).toBeLessThan(0.01);
  });

  // Published for MDF: 600 to 880 kg/m3 (a page on sheet weights) and 680 to 830 (another).
  it("of MDF are as dense as published ranges allow", () => {
    for (const board of Object.values(boards).filter(({ material }) => material === "MDF")) {
      expect(board.density).toBeGreaterThanOrEqual(680);
      expect(board.density).toBeLessThanOrEqual(830);
    }
  });
});

describe("units", () => {
  // 1 ft = 304.8 mm exactly (International yard and pound agreement, 1959).
  it("take a cubic foot for 28.316846592 L", () => {
    expect(readMeasure(volume, "1 ft3")).toBe(28.316846592);
    expect(readMeasure(volume, "1 ft3")).toBeCloseTo(3.048 ** 3, 9);
    expect(readMeasure(volume, "1 in3")).toBeCloseTo(0.254 ** 3, 12);
  });
});

describe("bolts", () => {
  // ISO 273, clearance holes for bolts and screws: fine, medium, coarse.
  it.each([
    ["M3", 3.2, 3.4, 3.6],
    ["M4", 4.3, 4.5, 4.8],
    ["M5", 5.3, 5.5, 5.8],
    ["M6", 6.4, 6.6, 7.0],
    ["M8", 8.4, 9.0, 10.0],
    ["M10", 10.5, 11.0, 12.0],
  ])("of %s have the clearance holes of ISO 273", (thread, fine, medium, coarse) => {
    for (const head of ["cap", "button", "flat", "button black"]) {
      expect(bolts[`${thread} ${head}`]?.clearance).toEqual({ fine, medium, coarse });
    }
  });

  // ISO 4762 and ASME B18.3: a cap head is as high as the bolt is thick.
  it("have cap heads as high as they are thick", () => {
    for (const { head, d } of Object.values(bolts)) if (head.form === "cap") expect(head.height).toBeCloseTo(d, 1);
  });

  // ISO 7380-1 (open fastener tables): M6 button head 10.5 x 3.3. ISO 10642: M6 sharp head diameter 13.44.
  it("of M6 have the heads of ISO 7380-1 and ISO 10642", () => {
    expect(bolts["M6 button"]?.head).toEqual({ d: 10.5, height: 3.3, form: "button" });
    expect(bolts["M6 flat"]?.head.d).toBe(13.44);
    // ISO 10642 gives k max 3.72 (from memory).
    expect(bolts["M6 flat"]?.head.height).toBeCloseTo(3.72, 9);
  });

  // ASME B18.2.8, normal clearance for 1/4 in: 0.281 in (from memory). ASME B18.3: button head 0.437 x 0.138 in.
  it("of 1/4-20 have the holes and heads of the ASME tables", () => {
    expect(bolts["1/4-20 button"]?.clearance.medium).toBeCloseTo(0.281 * 25.4, 9);
    expect(bolts["1/4-20 button"]?.head.d).toBeCloseTo(0.437 * 25.4, 9);
    expect(bolts["1/4-20 button"]?.pitch).toBeCloseTo(1.27, 9);
  });
});

describe("screws", () => {
  // MDF makers' published advice on screwing: a pilot in MDF is 85 to 95 % of the root. #8 root 0.131 in (NDS, from memory).
  it("of #8 take a pilot of 2.83 to 3.16 mm in MDF", () => {
    const { root, pilot } = screws["#8"]!;
    expect(root * rules.pilotLeast.value).toBeCloseTo(2.83, 2);
    expect(root * rules.pilotMost.value).toBeCloseTo(3.16, 2);
    expect(pilot).toBe(3);
  });

  it("all take a pilot of 85 to 95 % of their root", () => {
    for (const { root, pilot } of Object.values(screws)) {
      expect(pilot / root).toBeGreaterThanOrEqual(rules.pilotLeast.value);
      expect(pilot / root).toBeLessThanOrEqual(rules.pilotMost.value);
    }
  });

  // ASME B18.6.1: nominal diameter 0.060 + 0.013 x gauge, in; the largest is 0.004 more (from memory).
  it("of a gauge are as thick as ASME B18.6.1 says", () => {
    for (const gauge of [6, 8, 10]) {
      expect(screws[`#${gauge}`]?.d).toBeCloseTo((0.06 + 0.013 * gauge + 0.004) * 25.4, 9);
    }
  });
});
