import { describe, expect, it } from "vitest";
import { rectangle } from "../../src/geometry/shapes.js";
import type { Build } from "../../src/model/build.js";
import type { Part } from "../../src/model/part.js";
import { nestParts } from "../../src/nest/nest.js";
import { sampleBuild } from "../fixtures/build.js";
import { blankPart, board, orderOf, plain } from "../property/nestOrders.js";
import { outsideFrame, overlapsOn, pagesOf, wordsOf } from "./pages.js";

/** A cleat 18 thick, one long side bevelled by 45 degrees, and square at the other three, or across too. */
function cleat(name: string, length: number, ends: boolean): Part {
  const bevel = { bevel: Math.PI / 4, finish: { kind: "bare" as const }, flush: 0 };
  const profile = { outer: rectangle(0, 0, length, 70, ["near", "right", "far", "left"]), holes: [] };
  const edges = { far: bevel, ...(ends && { left: bevel }) };
  return blankPart(name, "one", plain(length, 70), { profile, edges });
}

/** The sample's build with these parts in their place, on an offcut of 900 x 70, or of another width with a trim. */
function buildOf(parts: readonly Part[], unit: Build["job"]["show"], offcut = { width: 70, trim: 0 }): Build {
  const boards = { one: board({ offcuts: [{ name: "A", length: 900, ...offcut }] }) };
  const order = orderOf(parts, boards, () => ({ method: "saw", gap: 3.2, turns: [0] }));
  const build = sampleBuild();
  const job = { ...order.job, show: unit };
  const layout = nestParts(job, order.shop, order.plan, order.process, { seed: 1, iterations: 5 }).value!;
  return { ...build, job, shop: order.shop, plan: order.plan, process: order.process, layout };
}

const ripPages = (build: Build) => pagesOf(build).filter(({ title }) => title.startsWith("Rip list"));
const shows = [{ unit: "mm" }, { unit: "in", denominator: 16 }] as const;

describe("the pages of the rip list", () => {
  it("tell of a bevel along a strip where it is cut, and how small parts are held for those that are cut alone", () => {
    const build = buildOf([cleat("a", 220, false), cleat("b", 200, true)], shows[0]);
    const words = ripPages(build).flatMap(wordsOf);
    const at = (what: string) => words.findIndex((each) => each.includes(what));
    // 70 - 18 tan 45 between fence and blade, at the table
    expect(at("1   tilt 45°, fence to 52")).toBeGreaterThanOrEqual(0);
    expect(at("its upper edge, name up")).toBeGreaterThan(at("1   tilt 45°"));
    expect(at("blade upright again")).toBeGreaterThan(at("its upper edge"));
    expect(at("tilt 45°, stop block to 182")).toBeGreaterThan(at("blade upright again"));
    expect(at("hard to hold: clamp it to the sled")).toBeGreaterThan(at("tilt 45°, stop block to 182"));
  });

  it("tell where the line of a true edge lies, not how far in, which would read as inches", () => {
    const words = ripPages(buildOf([cleat("a", 220, false)], shows[0], { width: 300, trim: 5 })).flatMap(wordsOf);
    expect(words.some((each) => each.includes("true the lower edge: line at 5"))).toBe(true);
    expect(words.filter((each) => /\d in$/.test(each))).toEqual(["4 in"]);
  });

  it.each(shows)("keep their words apart and in the frame, in $unit", (show) => {
    const pages = ripPages(buildOf([cleat("a", 220, true), cleat("b", 200, true), cleat("c", 180, false)], show));
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.flatMap((page) => [...overlapsOn(page), ...outsideFrame(page)])).toEqual([]);
  });
});
