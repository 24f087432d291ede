import { describe, expect, it } from "vitest";
import { programText } from "../../../src/export/gcode/program.js";
import { tessellate } from "../../../src/geometry/tessellate.js";
import { simulate } from "../../../src/machining/simulation/simulate.js";
import type { Cutter } from "../../../src/machining/simulation/tracks.js";
import type { Move, Run } from "../../../src/model/program.js";
import { cnc } from "../../../src/shop/machines.js";
import {
  drillRun,
  outsideTabs,
  outsideWithoutTabs,
  plateRegion,
  pocketArea,
  sampleSetup,
  straightRun,
} from "../../fixtures/program.js";

const chord = 0.002;
const cutters: ReadonlyMap<number, Cutter> = new Map([
  [3, { d: 5, form: "flat", angle: 0 }],
  [1, { d: 6, form: "flat", angle: 0 }],
]);
const room = { length: 500, width: 300, thickness: 18, top: 18, safe: 10, bed: cnc, travel: 150, below: 0.3 };
const [hole, opening] = plateRegion.holes.map((loop) => tessellate(loop, chord));
const plate = {
  name: "plate",
  blank: [tessellate(plateRegion.outer, chord), [...hole!].reverse(), [...opening!].reverse()],
  through: [hole!, opening!],
  outside: true,
  blind: [{ name: "pocket", area: [tessellate(pocketArea, chord)], depth: 8, draft: 0 }],
};

function cutBy(runs: readonly Run[], change: (text: string) => string = (text) => text) {
  const setup = sampleSetup({ runs });
  return simulate([change(programText(setup, runs, cnc, []))], cutters, [plate], room, chord);
}

const moved = (moves: readonly Move[], dx: number): readonly Move[] =>
  moves.map((move) => ({ ...move, to: [move.to[0] + dx, move.to[1], move.to[2]] }));

describe("a setup cut again from its text", () => {
  it("finds nothing wrong with a plate as it should be, on four tabs 3 mm high", () => {
    const { faults, parts } = cutBy([drillRun, straightRun(outsideTabs)]);
    expect(faults).toEqual([]);
    expect(parts[0]).toMatchObject({ lost: [], uncut: [], held: { bridges: 4 } });
    expect(parts[0]!.held!.height).toBeCloseTo(3, 6);
  });

  it("sees a way that runs 0.03 mm into the part, and lets 0.005 mm be", () => {
    expect(cutBy([drillRun, straightRun(moved(outsideTabs, 0.03))]).parts[0]!.lost.length).toBeGreaterThan(0);
    expect(cutBy([drillRun, straightRun(moved(outsideTabs, 0.005))]).parts[0]!.lost).toEqual([]);
  });

  it("sees that a part without tabs is loose", () => {
    expect(cutBy([drillRun, straightRun(outsideWithoutTabs)]).parts[0]!.held!.bridges).toBe(0);
  });

  it("sees a pocket that is too deep, and one that is not deep enough", () => {
    const deeper = cutBy([drillRun, straightRun(outsideTabs)], (text) => text.replaceAll("Z10.0000", "Z9.9500"));
    expect(deeper.parts[0]!.lost.length).toBeGreaterThan(0);
    const shallow = cutBy([drillRun, straightRun(outsideTabs)], (text) => text.replaceAll("Z10.0000", "Z10.0500"));
    expect(shallow.parts[0]!.uncut.map(({ name }) => name)).toContain("pocket");
  });

  it("sees a hole that was not drilled", () => {
    expect(cutBy([straightRun(outsideTabs)]).parts[0]!.uncut.map(({ name }) => name)).toContain("opening 1");
  });

  it.each([
    ["a rapid move below the safe height", (text: string) => text.replaceAll("G0 Z28.0000", "G0 Z20.0000")],
    ["cuts while the spindle stands", (text: string) => text.replaceAll(/^S\d+ M3$/gm, "S0 M5")],
    ["too deep below the sheet", (text: string) => text.replaceAll("Z-0.3000", "Z-0.4000")],
    ["no end", (text: string) => text.replace("M30\n", "")],
    ["G41 is not known", (text: string) => text.replace("G17", "G17 G41")],
    ["the ways over the sheet are wider than the bed", (text: string) => text.replace("X60.0000", "X4000.0000")],
  ])("tells of %s", (words, change) => {
    const faults = cutBy([drillRun, straightRun(outsideTabs)], change).faults.map((fault) => fault.words);
    expect(faults).toContain(words);
  });
});
