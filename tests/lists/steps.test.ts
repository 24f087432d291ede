import { describe, expect, it } from "vitest";
import { stepsInOrder, stepWords } from "../../src/lists/steps.js";
import type { Step } from "../../src/model/piece.js";
import { sampleBuild } from "../fixtures/build.js";

const { steps } = sampleBuild().plan.built;
const step = (id: string, ...after: string[]): Step => ({ id, after, parts: [], words: id, facts: {}, cautions: [] });
const order = (...given: Step[]) =>
  stepsInOrder(given)
    .map(({ id }) => id)
    .join(" ");

describe("build steps", () => {
  it("come after those they wait for", () => {
    expect(stepsInOrder(steps).map(({ id }) => id)).toEqual([
      "box.glue",
      "box.inserts",
      "box.top",
      "plate.try",
      "plate.wrap",
    ]);
  });

  it("keep the order given where nothing waits", () => {
    expect(order(step("c"), step("a"), step("b"))).toBe("c a b");
    expect(order(step("c", "b"), step("a"), step("b"))).toBe("a b c");
  });

  it("do not wait for a step that is not there", () => {
    expect(order(step("a", "gone"), step("b"))).toBe("a b");
  });

  it("that wait for each other come last, none lost", () => {
    expect(order(step("a", "b"), step("b", "a"), step("c"))).toBe("c a b");
  });

  it("are read with their facts filled in, in the reader's unit", () => {
    const wrap = steps.find(({ id }) => id === "plate.wrap")!;
    expect(stepWords(wrap, { unit: "mm" })).toContain("carpet over the face, round the edges and 40 mm on to the back");
    expect(stepWords(wrap, { unit: "in", denominator: 16 })).toContain('1 9/16" on to the back');
  });
});
