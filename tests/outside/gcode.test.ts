import { describe, expect, it } from "vitest";
import { bulgeOfSweep, radiusOf, sagittaOf } from "../../src/geometry/arc.js";
import { readProgram } from "../../src/machining/simulation/reader.js";

const start = "G20 G17 G40 G49 G80 G90 G94 G54\nG0 Z1\nG0 X0 Y0\nS9000 M3\nG1 Z-0.1 F40\n";

describe("published values of arcs", () => {
  // DXF Reference, LWPOLYLINE, code 42: the bulge is the tangent of a quarter of the included angle.
  it("a quarter turn has a bulge of 0.41421356", () => {
    expect(Math.abs(bulgeOfSweep(Math.PI / 2) - 0.41421356)).toBeLessThan(1e-8);
  });

  // ezdxf documentation, "Bulge value": sagitta = bulge x half the chord; radius from both, computed.
  it("over a chord of 100 that bulge gives a radius of 70.7107 and a sagitta of 20.7107", () => {
    expect(Math.abs(radiusOf(100, 0.41421356) - 70.7107)).toBeLessThan(1e-4);
    expect(Math.abs(sagittaOf(100, 0.41421356) - 20.7107)).toBeLessThan(1e-4);
  });

  // RS274/NGC interpreter of NISTIR 6556: TOLERANCE_INCH 0.0002, TOLERANCE_MM 0.002, checked in its arc routine.
  it.each([
    ["G3 X0 Y2.0003 I0 J1", 1],
    ["G3 X0 Y2.0001 I0 J1", 0],
  ])("an inch arc from radius 1.0000 is taken or refused by its end: %s", (arc, faults) => {
    const read = readProgram(`${start}${arc}\nM30\n`);
    expect(read.faults.filter(({ words }) => words.startsWith("radii"))).toHaveLength(faults);
  });
});
