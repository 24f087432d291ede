import { describe, expect, it } from "vitest";
import { csvExporter } from "../../../src/export/csv/csvExporter.js";
import type { Build } from "../../../src/model/build.js";
import { sampleBuild } from "../../fixtures/build.js";
import { routedBuild } from "../../fixtures/routed.js";
import { readCsv } from "./reader.js";

async function table(path: string, build: Build): Promise<readonly Readonly<Record<string, string>>[] | undefined> {
  const file = [...(await csvExporter.write(build))].find((each) => each.path === path);
  if (!file) return undefined;
  const [heads, ...rows] = readCsv(file.bytes);
  return rows.map((row) => Object.fromEntries(row.map((cell, i) => [heads![i]!, cell])));
}

describe("hand-routing.csv", () => {
  it("has every bush and bit with its own offset: half of bush less bit", async () => {
    const build = routedBuild();
    const rows = (await table("hand-routing.csv", build))!.filter(
      ({ what, bush }) => what === "template" && bush !== "own bearing",
    );
    expect(rows.length).toBeGreaterThan(50);
    for (const row of rows) {
      const offset = (build.shop.bushes[row["bush"]!]!.d - build.shop.bits[row["bit"]!]!.d) / 2;
      expect(Number(row["offset mm"])).toBeCloseTo(offset, 5);
    }
  });

  it("has the pivots in the order of the cuts, and the cautions", async () => {
    const rows = (await table("hand-routing.csv", routedBuild()))!;
    expect(rows.some(({ what }) => what === "circle jig, cut 1")).toBe(true);
    expect(rows.filter(({ what }) => what === "caution").length).toBeGreaterThan(0);
  });

  it("is not written where nothing is routed by hand", async () => {
    expect(await table("hand-routing.csv", sampleBuild())).toBeUndefined();
  });
});

describe("work-list.csv", () => {
  it("names every feature of every part, where it is cut and why there", async () => {
    const build = routedBuild();
    const rows = (await table("work-list.csv", build))!;
    const told = rows.flatMap(({ features }) => features!.split(" "));
    expect(told.length).toBeGreaterThanOrEqual(build.plan.built.parts.flatMap(({ features }) => features).length);
    for (const row of rows) expect(row["at"] !== "" && row["why"] !== "").toBe(true);
    expect(rows.some(({ at }) => at === "CNC router")).toBe(false);
  });
});
