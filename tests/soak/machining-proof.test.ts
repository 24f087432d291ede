import { describe, expect, it } from "vitest";
import { type WorkKind, workKinds } from "../../src/model/program.js";
import { generatedJob } from "../machining/proof/jobs.js";
import { countWork, wrongWith } from "../machining/proof/proved.js";

const jobs = 200;
const often = 20;

describe("programs of two hundred jobs, cut again from their text", () => {
  it(`hold every kind of work ${often} times at least`, () => {
    const counts = new Map<WorkKind, number>();
    for (let seed = 1; seed <= jobs; seed++) countWork(generatedJob(seed), counts);
    for (const kind of workKinds) expect(counts.get(kind) ?? 0, kind).toBeGreaterThanOrEqual(often);
  });

  it.each(Array.from({ length: jobs }, (_, i) => i + 1))(
    "leave the parts of job %i whole, held and clear of waste",
    (seed) => {
      expect(wrongWith(generatedJob(seed), 0.001)).toEqual([]);
    },
  );
});
