import { describe, expect, it } from "vitest";
import { generatedJob } from "./jobs.js";
import { wrongWith } from "./proved.js";

describe("programs, cut again from their text", () => {
  it.each(Array.from({ length: 20 }, (_, i) => i + 1))(
    "leave the parts of job %i whole, held and clear of waste",
    (seed) => {
      expect(wrongWith(generatedJob(seed), 0.002)).toEqual([]);
    },
  );
});
