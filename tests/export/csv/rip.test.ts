import { describe, expect, it } from "vitest";
import { csvExporter } from "../../../src/export/csv/csvExporter.js";
import type { Build } from "../../../src/model/build.js";
import { nestParts } from "../../../src/nest/nest.js";
import { sampleBuild } from "../../fixtures/build.js";
import { readCsv } from "./reader.js";

/** The sample with its panels laid anew, so that what is sawn has a rip list. */
function sawnBuild(): Build {
  const build = sampleBuild();
  const { job, shop, plan, process } = build;
  return { ...build, layout: nestParts(job, shop, plan, process, { seed: 1, iterations: 5 }).value! };
}

async function table(build: Build): Promise<readonly Readonly<Record<string, string>>[] | undefined> {
  const file = [...(await csvExporter.write(build))].find(({ path }) => path === "rip-list.csv");
  if (!file) return undefined;
  const [heads, ...rows] = readCsv(file.bytes);
  return rows.map((row) => Object.fromEntries(row.map((cell, i) => [heads![i]!, cell])));
}

describe("rip-list.csv", () => {
  it("has a row a cut, each with one thing to set, in the order of the list", async () => {
    const build = sawnBuild();
    const cuts = build.layout.rips!.cuts;
    const rows = (await table(build))!.filter(({ cut }) => cut !== "caution").slice(0, cuts.length);
    expect(rows.map(({ cut }) => Number(cut))).toEqual(cuts.map((_, i) => i + 1));
    for (const row of rows)
      expect([row["fence"], row["stop block"], row["line"]].filter((cell) => cell !== "").length).toBe(1);
  });

  it("tells of a true edge where the good board begins, whatever the blade takes of the waste beside it", async () => {
    const build = sawnBuild();
    const trims = new Set(build.layout.sheets.filter(({ sawn }) => sawn).map(({ trim }) => `${trim}`));
    const lines = (await table(build))!.filter(({ what }) => what === "true edge").map(({ line }) => line!);
    expect(lines.length).toBeGreaterThan(1);
    for (const line of lines) expect(trims).toContain(line.replace(/ from the (lower|left) edge$/, ""));
  });

  it("adds up: what comes off, the kerf and the rest are the piece that goes in", async () => {
    const { cuts } = sawnBuild().layout.rips!;
    for (const { along, piece, setting, kerf, rest } of cuts) {
      const [across, left] = along ? [piece.width, rest?.width ?? 0] : [piece.length, rest?.length ?? 0];
      expect(setting + kerf + left).toBeCloseTo(across, 2);
    }
    expect(cuts.length).toBeGreaterThan(5);
  });

  it("names every sawn part once, and ends with the cautions", async () => {
    const build = sawnBuild();
    const rows = (await table(build))!;
    const off = rows.flatMap((row) => [row["comes off"]!, row["rest"]!]).filter((cell) => cell.startsWith("part "));
    const sawn = build.layout.sheets.filter((sheet) => sheet.sawn).flatMap((sheet) => sheet.placed);
    expect(new Set(off).size).toBe(off.length);
    expect(off.length).toBe(sawn.length);
    expect(rows.at(-1)!["cut"]).toBe("caution");
  });

  it("is not written where nothing is sawn", async () => {
    expect(await table(sampleBuild())).toBeUndefined();
  });
});
