import { describe, expect, it } from "vitest";
import { withhold } from "../../src/flow/withhold.js";
import type { Finding } from "../../src/input/finding.js";
import { sampleBuild } from "../fixtures/build.js";

const { plan } = sampleBuild();
const error = (...on: string[]): Finding => ({ code: "test", severity: "error", at: [], on, facts: {} });
const numbers = (findings: readonly Finding[], reach: "part" | "whole piece" = "part") =>
  withhold(plan, findings, reach).value?.built.parts.map((part) => part.number);
const all = plan.built.parts.map((part) => part.number);

describe("what an error speaks of", () => {
  it("is not made: a part by its id, a feature or its piece", () => {
    const [part] = plan.built.parts;
    const others = all.filter((number) => number !== part!.number);
    expect(numbers([error(part!.id)])).toEqual(others);
    expect(numbers([error(part!.features.at(-1)!.id)])).toEqual(others);
    const elsewhere = plan.built.parts.filter((each) => each.piece !== part!.piece).map((each) => each.number);
    expect(numbers([error(part!.piece)])).toEqual(elsewhere);
  });

  it("is not made, nor the rest of its piece, where the piece does not fit or hold", () => {
    const [part] = plan.built.parts;
    const elsewhere = plan.built.parts.filter((each) => each.piece !== part!.piece).map((each) => each.number);
    expect(elsewhere.length).toBeLessThan(all.length - 1);
    expect(numbers([error(part!.id)], "whole piece")).toEqual(elsewhere);
  });

  it("is not made where an axis joins it: every part on the axis", () => {
    const axis = plan.built.axes[0]!;
    const through = axis.stack.map(({ part }) => part);
    const kept = plan.built.parts.filter((part) => !through.includes(part.id)).map((part) => part.number);
    expect(numbers([error(axis.id)])).toEqual(kept);
  });

  it("is told once, by name, and nothing that is still made mentions it", () => {
    const [part] = plan.built.parts;
    const { value, findings } = withhold(plan, [error(part!.id)], "part");
    expect(findings.map(({ code, on }) => [code, on])).toEqual([["parts-withheld", [part!.id]]]);
    const { joints, axes, steps } = value!.built;
    expect(JSON.stringify({ joints, axes, steps })).not.toContain(`"${part!.id}"`);
  });
});

describe("a warning", () => {
  it("holds back nothing", () => {
    const warning: Finding = { ...error(plan.built.parts[0]!.id), severity: "warning" };
    expect(withhold(plan, [warning], "part")).toEqual({ value: plan, findings: [] });
  });
});
