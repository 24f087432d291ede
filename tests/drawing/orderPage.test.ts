import { describe, expect, it } from "vitest";
import { orderPages, type PrintedStep } from "../../src/drawing/orderPage.js";
import type { Item } from "../../src/drawing/page.js";
import { printedSteps } from "../../src/lists/steps.js";
import { sampleBuild } from "../fixtures/build.js";

const build = sampleBuild();
const { parts } = build.plan.built;
const words = (items: readonly Item[]) => items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
const dust = "Dust harms lungs.";
const steps = (count: number): readonly PrintedStep[] =>
  Array.from({ length: count }, (_, i) => ({
    piece: "box",
    words: `Glue what comes at place ${i + 1}`,
    parts: parts.slice(0, 3).map(({ id }) => id),
    cautions: i === 1 || i === 3 ? [dust] : [],
  }));

describe("the order of work", () => {
  it("has every step of the job once, in order, with the numbers of its parts", () => {
    const printed = printedSteps(build);
    const told = orderPages(printed, build, "").flatMap(({ items }) => words(items));
    const all = told.join(" ");
    for (const step of printed) expect(all).toContain(step.words.split(" ").slice(0, 3).join(" "));
    for (let i = 1; i <= printed.length; i++) expect(told).toContain(`${i}`);
    expect(words(orderPages(steps(1), build, "")[0]!.items)).toContain("B1 to 3");
  });

  it("tells a caution in full where it first belongs, and points back to it later", () => {
    const told = orderPages(steps(5), build, "").flatMap(({ items }) => words(items));
    expect(told.filter((each) => each === dust)).toHaveLength(1);
    expect(told).toContain("Mind what step 2 says.");
  });

  it("goes on to another page only with its share of the steps", () => {
    for (let count = 5; count < 60; count += 3) {
      const pages = orderPages(steps(count), build, "");
      const rows = pages.map(({ items }) => words(items).filter((each) => each.startsWith("Glue what")).length);
      expect(rows.reduce((sum, each) => sum + each, 0)).toBe(count);
      expect(Math.min(...rows), `${rows}`).toBeGreaterThanOrEqual(Math.floor(count / pages.length / 2));
    }
  });

  it("is left out where nothing is put together", () => {
    expect(orderPages([], build, "")).toEqual([]);
  });
});
