import { describe, expect, it } from "vitest";
import { cutListOf } from "../../src/lists/cutList.js";
import { sampleBuild } from "../fixtures/build.js";

const build = sampleBuild();
const rows = cutListOf(build);
const row = (number: string) => rows.find(({ numbers }) => numbers.includes(number))!;

describe("the cut list", () => {
  it("has every part once and joins the two equal walls in one row", () => {
    expect(rows.flatMap(({ numbers }) => numbers).sort()).toEqual([
      "B1",
      "B2",
      "B3",
      "B4",
      "B5",
      "B6",
      "H1",
      "P1",
      "R1",
    ]);
    expect(row("B3")).toMatchObject({ numbers: ["B3", "B4"], quantity: 2, method: "saw", sheets: ["box 1"] });
    expect(row("B5").quantity).toBe(1);
  });

  it("gives the plate as cut, and 3.5 larger all round with its carpet on", () => {
    expect(row("P1").asCut).toEqual({ length: 1027, width: 847 });
    expect(row("P1").blank).toEqual({ length: 1027, width: 847 });
    expect(row("P1").finished.length).toBeCloseTo(1034, 9);
    expect(row("P1").finished.width).toBeCloseTo(854, 9);
  });

  it("measures length along the grain where a part has one, else along the longer way", () => {
    const parts = build.plan.built.parts.map((part) => (part.number === "H1" ? { ...part, grain: Math.PI / 2 } : part));
    const grained = { ...build, plan: { ...build.plan, built: { ...build.plan.built, parts } } };
    expect(row("H1").asCut).toEqual({ length: 200, width: 120 });
    const turned = cutListOf(grained).find(({ numbers }) => numbers.includes("H1"))!;
    expect(turned.asCut).toEqual({ length: 120, width: 200 });
    expect(turned.grain).toBe(true);
  });

  it("says what meets which edge and what goes round it", () => {
    expect(row("B3").edges).toEqual([
      "bottom: butt joint, lapped by part B2, glued",
      "top: butt joint, lapped by part B1, glued",
    ]);
    expect(row("P1").edges).toEqual([
      "rear, right, notch auxiliary battery, front, left: carpet round the edge and 40 mm on to the back",
    ]);
    expect(row("B1").edges).toEqual([]);
  });

  it("counts the work in each part", () => {
    expect(row("B1").notes).toEqual(["1 opening, 18 holes"]);
    // it stands between top and bottom, 113.6 apart, and the saw is set in half millimetres
    expect(row("B3").notes).toEqual(["2 holes into an edge", "cut to fit: 113.6 mm"]);
    expect(row("P1").notes).toEqual(["1 notch, 1 opening, 6 holes, 1 groove on the back", "carpet on the face"]);
    expect(row("R1").notes).toEqual(["1 opening, 1 recess, 8 holes, 1 chamfer"]);
  });

  it("keeps parts that are cut by different methods in different rows", () => {
    const parts = build.process.parts.map((each) =>
      each.part === "box/right" ? { ...each, method: "cnc" as const } : each,
    );
    const split = cutListOf({ ...build, process: { ...build.process, parts } });
    expect(split.find(({ numbers }) => numbers.includes("B3"))!.quantity).toBe(1);
  });

  it("tells of a part that lies on no sheet", () => {
    const sheets = build.layout.sheets.slice(0, 1);
    const left = cutListOf({ ...build, layout: { ...build.layout, sheets } });
    expect(left.find(({ numbers }) => numbers.includes("P1"))!.sheets).toEqual([]);
  });
});
