import { describe, expect, it } from "vitest";
import { planJob } from "../../src/plan/plan.js";
import { toy, toyJob, toyShop } from "./toyKind.js";

const plan = (job: ReturnType<typeof toyJob>) => planJob(job, toyShop, [toy]);

describe("names that pieces mention", () => {
  it("are looked up, with the nearest known one as the next step", () => {
    const { findings } = plan(toyJob({ box: {}, plate: { leans: ["bxo"] } }));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: "unknown-name",
      at: [{ path: ["pieces", "plate", "leans", 0] }],
      facts: { found: { value: "bxo" }, hint: { value: "did you mean box?" } },
    });
  });

  it("put the pieces in order, whatever order the file has them in", () => {
    const { value, findings } = plan(toyJob({ plate: { leans: ["ring", "box"] }, ring: { leans: ["box"] }, box: {} }));
    expect(findings).toEqual([]);
    expect(value?.frames.map(([id]) => id)).toEqual(["box", "ring", "plate"]);
  });

  it("may not run in a circle, and every piece of the circle is named", () => {
    const job = toyJob({ a: { leans: ["c"] }, b: { leans: ["a"] }, c: { leans: ["b"] }, alone: {} });
    const { value, findings } = plan(job);
    expect(findings.map((finding) => finding.code)).toEqual(["pieces-in-a-circle"]);
    expect(findings[0]?.on).toEqual(["a", "b", "c"]);
    expect(value?.withheld).toEqual(["a", "b", "c"]);
    expect(value?.frames.map(([id]) => id)).toEqual(["alone"]);
  });

  it("withhold what leans on a circle, and say so apart from the circle", () => {
    const { findings } = plan(toyJob({ a: { leans: ["b"] }, b: { leans: ["a"] }, plate: { leans: ["a"] } }));
    expect(findings.map((finding) => finding.code).sort()).toEqual(["leans-on-withheld", "pieces-in-a-circle"]);
  });

  it("withhold what leans on a piece that offers nothing", () => {
    const { value, findings } = plan(
      toyJob({ box: { mute: true }, ring: { leans: ["box"] }, plate: { leans: ["ring"] } }),
    );
    expect(value?.withheld).toEqual(["box", "ring", "plate"]);
    expect(findings.map((finding) => finding.facts["other"])).toEqual([
      { unit: "text", value: "box" },
      { unit: "text", value: "ring" },
    ]);
  });

  it("withhold what leans on a piece that could not be read", () => {
    const job = { ...toyJob({ plate: { leans: ["box"] } }), withheld: ["box"] };
    const { value, findings } = plan(job);
    expect(findings.map((finding) => finding.code)).toEqual(["leans-on-withheld"]);
    expect(value?.withheld).toEqual(["box", "plate"]);
  });

  it("find the board that no stock matches", () => {
    const job = { ...toyJob({ box: {} }), boards: { box: { stock: "mdf-81" } } };
    const { findings } = plan(job);
    expect(findings[0]).toMatchObject({
      code: "unknown-name",
      at: [{ path: ["boards", "box", "stock"] }],
      facts: { hint: { value: "did you mean mdf-18?" } },
    });
  });
});
