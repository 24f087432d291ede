import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildJob, usualOptions } from "../../../src/flow/build.js";
import { parseJob } from "../../../src/job/parse.js";
import { kinds } from "../../../src/pieces/kinds.js";
import { starterShop } from "../../../src/shop/starter.js";
import { generatedJob } from "./jobs.js";
import { wrongWith } from "./proved.js";

describe("programs, cut again from their text", () => {
  it.each(Array.from({ length: 20 }, (_, i) => i + 1))(
    "leave the parts of job %i whole, held and clear of waste",
    (seed) => {
      expect(wrongWith(generatedJob(seed), 0.002)).toEqual([]);
    },
  );

  it("leave the parts of the starter whole, held and clear of waste", async () => {
    const file = "templates/estate-cargo.yaml";
    const job = parseJob(readFileSync(file, "utf8"), file, kinds).value!;
    const { value: build } = await buildJob(job, starterShop(), kinds, usualOptions);
    expect(build!.program.setups.length).toBeGreaterThan(0);
    expect(wrongWith(build!, 0.01)).toEqual([]);
  });
});
