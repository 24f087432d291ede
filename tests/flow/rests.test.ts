import { describe, expect, it } from "vitest";
import { layoutLines } from "../../src/cli/layoutLines.js";
import { loadJob } from "../../src/cli/load.js";
import { programsOf } from "../../src/export/gcode/gcodeFiles.js";
import { planFileOf } from "../../src/export/json/planFile.js";
import { buildJob } from "../../src/flow/build.js";
import { buysOf } from "../../src/lists/buys.js";
import { kinds } from "../../src/pieces/kinds.js";
import { overlapsOn, pagesOf, wordsOf } from "../drawing/pages.js";

/** Walls by saw, cheeks by machine: six and two parts of one board. */
const { job, shop } = await loadJob("templates/arch-step.yaml", {});
const build = (await buildJob(job!, shop!, kinds, { seed: 1, iterations: 1 })).value!;
const said = (title: string) =>
  pagesOf(build)
    .filter((page) => page.title === title)
    .flatMap(wordsOf)
    .join(" ");

describe("a job whose machine goes on with the rest of a sawn sheet", () => {
  it("buys one sheet and not two", () => {
    expect(buysOf(build).filter(({ kind }) => kind === "sheet")).toMatchObject([{ count: 1 }]);
    const lines = layoutLines(build).join("\n");
    expect(lines).toContain("1 to buy; 1 rest for the machine");
    expect(lines).toMatch(/1 of box, proven fewest/);
    expect(lines).toMatch(/goes on +[\d.]+ x [\d.]+ mm as box 1 rest/);
    expect(lines).not.toContain("box 2");
  });

  it("says the same of that piece in the rip list, on both sheets' pages and at the head of the program", () => {
    const [piece] = build.layout
      .rips!.cuts.flatMap(({ off, rest }) => [off, rest])
      .filter((each) => each?.goesOn === "box 1 rest");
    expect(said("Rip list")).toContain(`${piece!.name}, to the machine`);
    expect(said("Sheet box 1")).toContain(`Piece ${piece!.name} goes on to the machine as sheet box 1`);
    expect(said("Sheet box 1")).toContain("goes on: box 1 rest");
    expect(said("Sheet box 1 rest")).toContain(`Piece ${piece!.name} of sheet box 1: saw that first`);
    expect(said("Cut list")).toContain("rest of sheet box 1");
    const [setup] = build.program.setups;
    const [program] = programsOf(build, setup!, build.shop.cnc!, "");
    expect(program!.text).toContain("the rest of sheet box 1, as it lay there: saw that first");
  });

  it("has pages on which no words lie over others", () => {
    expect(pagesOf(build).flatMap(overlapsOn)).toEqual([]);
  });

  it("tells other programs which sheet it comes off, and where it lay", () => {
    const { layout } = planFileOf(build);
    const [sheet, rest] = layout.sheets;
    expect(rest!.restOf!.sheet).toBe(sheet!.sheet);
    const { x, y } = rest!.restOf!;
    expect(x + rest!.length).toBeCloseTo(sheet!.length, 6);
    expect(y + rest!.width).toBeCloseTo(sheet!.width, 6);
  });
});
