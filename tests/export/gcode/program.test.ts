import { describe, expect, it } from "vitest";
import { programText } from "../../../src/export/gcode/program.js";
import { readProgram, type Step } from "../../../src/machining/simulation/reader.js";
import type { Move } from "../../../src/model/program.js";
import type { Cnc, Controller } from "../../../src/model/shop.js";
import { controllers } from "../../../src/shop/controllers.js";
import { cnc as starter } from "../../../src/shop/machines.js";
import { above, cut, operation, sampleSetup, turn, up } from "../../fixtures/program.js";

const setup = sampleSetup();
const machine = (changes: Partial<Controller> = {}, cnc: Partial<Cnc> = {}): Cnc => ({
  ...starter,
  ...cnc,
  controller: { ...controllers["changes tools"], ...changes },
});
const written = (cnc: Cnc) => programText(setup, setup.runs, cnc, []);
const linesOf = (cnc: Cnc) => written(cnc).trimEnd().split("\n");
const runOf = (moves: readonly Move[]) => [{ ...setup.runs[1]!, operations: [operation("outside", -1, moves)] }];
const arcsOf = (steps: readonly Step[]) => steps.filter(({ arc }) => arc !== undefined);
const inches = { units: "inch", decimals: 5 } as const;

describe("a program", () => {
  it("starts with unit, plane, modes and work offset, and goes up before it goes anywhere", () => {
    expect(linesOf(machine()).slice(0, 2)).toEqual(["G21 G17 G40 G49 G80 G90 G94 G54", "G0 Z28.0000"]);
    expect(linesOf(machine(inches))[0]).toMatch(/^G20 /);
  });

  it("turns the spindle and waits before the first plunge of each tool, and ends in full", () => {
    const lines = linesOf(machine());
    const changes = lines.flatMap((line, i) => (/M6$/.test(line) ? [i] : []));
    expect(changes.map((i) => lines[i])).toEqual(["T3 M6", "T1 M6"]);
    for (const i of changes)
      expect(lines.slice(i + 1, i + 4)).toEqual(["G0 Z28.0000", expect.stringMatching(/^S\d+ M3$/), "G4 P5.0"]);
    expect(lines.slice(-4)).toEqual(["M5", "G0 Z28.0000", "M9", "M30"]);
  });

  it("stands on the sheet's top where the machine is zeroed there", () => {
    expect(linesOf(machine({}, { zero: "sheet top" }))[1]).toBe("G0 Z10.0000");
    const deepest = (cnc: Cnc) => Math.min(...readProgram(written(cnc)).steps.map(({ to }) => to[2]));
    expect(deepest(machine())).toBeCloseTo(-0.3, 9);
    expect(deepest(machine({}, { zero: "sheet top" }))).toBeCloseTo(-18.3, 9);
  });

  it("waits for a person where the machine cannot change tools, with the spindle off and the bit up", () => {
    const lines = linesOf(machine({ tools: "pause" }));
    const at = lines.indexOf("M0");
    expect(lines.filter((line) => line === "M0")).toHaveLength(1);
    expect(lines.slice(at - 4, at)).toEqual([
      "M5",
      "M9",
      "T1",
      "(MSG, put in tool 1: straight-6, set z zero anew, then go on)",
    ]);
    expect(lines.join("\n")).not.toContain("M6");
  });

  it("starts extraction where it is wired, and stops it for the change", () => {
    const lines = linesOf(machine({ extraction: "M8" }));
    expect(lines.filter((line) => line === "M8")).toHaveLength(2);
    expect(lines.indexOf("M9")).toBeLessThan(lines.indexOf("T1 M6"));
  });

  it("counts dwell in milliseconds, and ends with M2, where the controller wants it so", () => {
    const lines = linesOf(machine({ dwell: "milliseconds", end: "M2" }));
    expect(lines).toContain("G4 P5000");
    expect(lines.at(-1)).toBe("M2");
  });

  it.each([
    ["mm", {}],
    ["mm, 3 decimals", { decimals: 3 }],
    ["inches", inches],
    ["inches, 4 decimals", { ...inches, decimals: 4 }],
  ] as const)("reads back without a fault and ends every move where it was meant to, in %s", (_, changes) => {
    const { steps, faults } = readProgram(written(machine({ ...changes, circles: "halves" })));
    expect(faults).toEqual([]);
    const moves = setup.runs.flatMap(({ operations }) => operations.flatMap((each) => each.moves));
    const places = steps.map(({ to }) => to).filter(([x]) => !Number.isNaN(x));
    for (const { to } of moves) {
      const near = Math.min(...places.map(([x, y, z]) => Math.hypot(x - to[0], y - to[1], z - to[2] - 18)));
      expect(near).toBeLessThan(0.002);
    }
  });

  it("sends a circle whole, or in halves, and both go the same way round", () => {
    const whole = arcsOf(readProgram(written(machine())).steps);
    const halves = arcsOf(readProgram(written(machine({ circles: "halves" }))).steps);
    const turns = (steps: readonly Step[]) => steps.reduce((sum, { arc }) => sum + arc!.sweep, 0);
    expect(whole.some(({ arc }) => Math.abs(arc!.sweep) > 6.28)).toBe(true);
    expect(halves.every(({ arc }) => Math.abs(arc!.sweep) < 3.15)).toBe(true);
    expect(turns(whole)).toBeCloseTo(turns(halves), 3);
  });

  it("sends arcs as lines that stay within the chord, for a controller that takes none", () => {
    const { steps, faults } = readProgram(written(machine({ arcs: "lines", chord: 0.01 })));
    expect(faults).toEqual([]);
    expect(arcsOf(steps)).toEqual([]);
    // the last ring of the opening has radius 22 about 180, 100; its chords stand off by at most 0.01
    const ring = steps.filter(({ rapid, to }) => !rapid && Math.abs(Math.hypot(to[0] - 180, to[1] - 100) - 22) < 0.001);
    expect(ring.length).toBeGreaterThan(100);
    for (const { from, to } of ring.slice(1)) {
      const off = 22 - Math.hypot((from[0] + to[0]) / 2 - 180, (from[1] + to[1]) / 2 - 100);
      if (Math.hypot(from[0] - 180, from[1] - 100) > 21.9) expect(off).toBeLessThan(0.0102);
    }
  });

  it("never sends an arc that would become a full circle because its ends are written alike", () => {
    const moves = [
      ...above(10, 10),
      cut(10, 10, -1),
      turn(10.00004, 10, -1, 0.5),
      turn(10.00004, 10.00004, -1, -3),
      up(10, 10),
    ];
    const text = programText(setup, runOf(moves), machine(), []);
    expect(arcsOf(readProgram(text).steps)).toEqual([]);
  });

  it("sends an arc of more than half a turn in two, so that its centre cannot run away", () => {
    const moves = [...above(10, 10), cut(10, 10, -1), turn(10.01, 10, -1, 300), up(10.01, 10)];
    const arcs = arcsOf(readProgram(programText(setup, runOf(moves), machine(), [])).steps);
    expect(arcs).toHaveLength(2);
    for (const { arc } of arcs) expect(arc!.radius).toBeCloseTo((0.01 * (1 + 300 ** 2)) / (4 * 300), 3);
  });

  it("sends a very flat arc as a line, not about a centre kilometres away", () => {
    const moves = [...above(10, 10), cut(10, 10, -1), turn(410, 10, -1, 1e-5), up(410, 10)];
    expect(arcsOf(readProgram(programText(setup, runOf(moves), machine(), [])).steps)).toEqual([]);
  });

  it("holds no exponent and no negative zero", () => {
    const moves = [...above(0, 0), cut(-1e-7, 1e-7, -1e-9), cut(5, -0, -1), up(5, 0)];
    const text = programText(setup, runOf(moves), machine({}, { zero: "sheet top" }), []);
    expect(text).not.toMatch(/-0\.0+\b|\d[eE]/);
  });
});
