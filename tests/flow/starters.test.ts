import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { loadJob } from "../../src/cli/load.js";
import { buildJob } from "../../src/flow/build.js";
import type { Build } from "../../src/model/build.js";
import { kinds } from "../../src/pieces/kinds.js";
import { outsideFrame, overlapsOn, pagesOf, wordsOf } from "../drawing/pages.js";

const starters = readdirSync("templates").filter((file) => file.endsWith(".yaml") && !file.startsWith("shop"));

async function built(file: string): Promise<Build> {
  const { job, shop, findings } = await loadJob(join("templates", file), {});
  const outcome = await buildJob(job!, shop!, kinds, { seed: 1, iterations: 1, found: findings });
  return outcome.value!;
}

describe.each(starters)("%s", async (file) => {
  const build = await built(file);

  it("has no errors and no warnings, and every part lies on a sheet", () => {
    expect(build.findings.filter(({ severity }) => severity !== "note").map(({ code }) => code)).toEqual([]);
    const placed = build.layout.sheets.flatMap((sheet) => sheet.placed.map(({ part }) => part));
    expect(placed).toHaveLength(build.plan.built.parts.length);
  });

  it("reaches the net volume that it asks for to two hundredths", () => {
    for (const { wantedL, terms } of build.plan.built.air) {
      const net = terms.reduce((sum, { litres }) => sum + litres, 0);
      expect(Math.abs(net - (wantedL ?? net))).toBeLessThanOrEqual(0.02 * net);
    }
  });

  it("shows the sizes of both faces of every bevelled panel, and no text over another or off the page", () => {
    const pages = pagesOf(build);
    const bevelled = build.plan.built.parts.filter(({ edges }) =>
      Object.values(edges).some(({ bevel }) => bevel !== 0),
    );
    for (const { number } of bevelled) {
      const own = pages
        .filter((page) => page.title.startsWith(`${number} `))
        .flatMap(wordsOf)
        .join(" ");
      expect(own).toMatch(/Face .+ when finished/);
      expect(own).toMatch(/back then measures/);
    }
    expect(pages.flatMap(overlapsOn)).toEqual([]);
    expect(pages.flatMap(outsideFrame)).toEqual([]);
  });
});
