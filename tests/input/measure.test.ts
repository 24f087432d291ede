import { describe, expect, it } from "vitest";
import { readMeasure, readSpan } from "../../src/input/measure.js";
import { angle, area, frequency, mass, power, resistance, volume } from "../../src/input/measures.js";

describe("readMeasure", () => {
  // International yard and pound agreement, 1959: the inch is 25.4 mm, the pound 0.45359237 kg, exactly.
  it.each([
    [volume, "20 L", 20],
    [volume, "20l", 20],
    [volume, "850 mL", 0.85],
    [volume, "1 ft3", 28.316846592],
    [volume, "1 cu ft", 28.316846592],
    [volume, "1 in³", 0.016387064],
    [volume, "1220 cu. in", 1220 * 0.016387064],
    [volume, "1/2 ft³", 14.158423296],
    [angle, "45", Math.PI / 4],
    [angle, "-55deg", (-55 * Math.PI) / 180],
    [angle, "90°", Math.PI / 2],
    [mass, "26 lb", 26 * 0.45359237],
    [mass, "850 g", 0.85],
    [frequency, "31 Hz", 31],
    [frequency, "2.5kHz", 2500],
    [area, "346 cm2", 34_600],
    [area, "53.6 in²", 53.6 * 645.16],
    [power, "350 W", 350],
    [resistance, "4 Ω", 4],
    [resistance, "4 ohms", 4],
  ])("reads it in the inner unit (%#: %s, %j)", (measure, text, value) => {
    expect(readMeasure(measure, text)).toBeCloseTo(value, 9);
  });

  it.each([
    [volume, "20"],
    [volume, "20 gallons"],
    [volume, "cuxft"],
    [volume, "1 cuxft"],
    [mass, "12"],
    [area, "346"],
    [angle, "45 grad"],
    [frequency, "31 Hz low"],
  ])("refuses what has no unit or another (%#: %s, %j)", (measure, text) => {
    expect(readMeasure(measure, text)).toBeUndefined();
  });

  it("reads a span whose unit stands behind its end, or behind both", () => {
    expect(readSpan(volume, "18 to 24 L")).toEqual([18, 24]);
    expect(readSpan(volume, "18-24 L")).toEqual([18, 24]);
    expect(readSpan(volume, "18 L – 0.024 m3")).toEqual([18, 24]);
    expect(readSpan(volume, "18 24 L")).toBeUndefined();
    expect(readSpan(volume, "18 to 24")).toBeUndefined();
  });
});
