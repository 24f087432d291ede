import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonExporter } from "../../../src/export/json/jsonExporter.js";
import { printJson } from "../../../src/export/json/printJson.js";
import type { Show } from "../../../src/input/show.js";
import { sampleBuild } from "../../fixtures/build.js";

async function text(show: Show = { unit: "mm" }): Promise<string> {
  const [file] = [...(await jsonExporter.write(sampleBuild(show)))];
  expect(file!.path).toBe("plan.json");
  return new TextDecoder().decode(file!.bytes);
}

describe("plan.json", () => {
  it("gives back the plan, the process and the layout as they were", async () => {
    const read = JSON.parse(await text());
    const { plan, process, layout, hash } = sampleBuild();
    expect(read).toMatchObject({ version: 1, hash, process, layout, findings: [] });
    expect(read.plan.parts).toEqual(plan.built.parts);
    expect(read.plan.frames).toEqual(plan.frames);
    expect(read.lists.cutList).toHaveLength(8);
    expect(read.files.parts).toHaveLength(9);
  });

  it("has the same text for everything but the lists in mm and in inches", async () => {
    const [mm, inches] = [await text(), await text({ unit: "in", denominator: 16 })];
    const before = (whole: string) => whole.slice(0, whole.indexOf('\n  "lists": '));
    expect(before(mm).length).toBeGreaterThan(10_000);
    expect(before(inches)).toBe(before(mm));
    expect(inches).not.toBe(mm);
  });

  it("does not depend on the order in which keys were made", () => {
    const one = printJson({ a: { x: 1, y: [{ p: 1, q: 2 }] } });
    expect(printJson({ a: { y: [{ q: 2, p: 1 }], x: 1 } })).toBe(one);
  });

  it("says what JSON.stringify says, whatever the data", () => {
    const data = fc.dictionary(fc.string(), fc.jsonValue());
    fc.assert(
      fc.property(data, (value) => {
        expect(JSON.parse(printJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it("keeps lines short where data can be split, and small things on one line", async () => {
    const lines = (await text()).split("\n");
    expect(lines).toContain('        "ray": {"origin": [345, 65, 165.5], "quat": [0, 0, 0, 1]},');
    expect(lines.filter((line) => /^\s*[[{].*[\]}],?$/.test(line)).every((line) => line.length <= 121)).toBe(true);
  });
});
