import { describe, expect, it } from "vitest";
import { wordsOf } from "../../../src/input/words.js";
import { checks, runChecks } from "../../../src/plan/checks/checks.js";
import { pairs, soundBox } from "./codes.js";

const defs = checks.flatMap((check) => check.findings);

describe("the checks", () => {
  it("declare each code once", () => {
    const codes = defs.map((def) => def.code);
    expect(new Set(codes).size).toBe(codes.length);
  });

  it("have for every code a plan that raises it and one just short of it", () => {
    expect(pairs.map((pair) => pair.code).sort()).toEqual(defs.map((def) => def.code).sort());
  });

  it.each(pairs)("raise $code, and not where it is just short of it", async ({ code, raises, short }) => {
    const def = defs.find((each) => each.code === code)!;
    const [raised, spared] = [raises(), short()];
    const found = (await runChecks(raised.job, raised.shop, raised.plan)).filter((finding) => finding.code === code);
    expect(found.length).toBeGreaterThan(0);
    for (const finding of found) {
      expect(finding.severity).toBe(def.severity);
      const { words, next } = wordsOf(finding, def, { unit: "mm" });
      expect(`${words} ${next}`).not.toMatch(/[{}]|NaN|Infinity|undefined/);
    }
    const others = await runChecks(spared.job, spared.shop, spared.plan);
    expect(others.filter((finding) => finding.code === code)).toEqual([]);
  });

  it("say nothing of a sound box with its driver in it", async () => {
    const { job, shop, plan } = soundBox();
    expect(await runChecks(job, shop, plan)).toEqual([]);
  });
});
