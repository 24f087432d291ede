import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { boxes, planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";

describe("boxes of all forms", () => {
  it("close, touch where they are joined, overlap nowhere and have the volume of the formula", async () => {
    let made = 0;
    await fc.assert(
      fc.asyncProperty(boxes, async (box) => {
        const planned = planBox(box);
        if (hasErrors(planned.findings)) return;
        made += 1;
        await proveBox(planned);
      }),
      { seed: 7, numRuns: 50 },
    );
    // most of what is drawn can be built, or the generator proves nothing
    expect(made).toBeGreaterThan(30);
  }, 60_000);
});
