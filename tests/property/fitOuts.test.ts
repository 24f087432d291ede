import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";
import { fittedBoxes } from "./fitOuts.js";

describe("boxes with dividers, braces and slot ports", () => {
  it("have chambers that are closed, boards that meet and overlap nowhere, and the volumes of the formulas", async () => {
    let made = 0;
    await fc.assert(
      fc.asyncProperty(fittedBoxes, async (box) => {
        const planned = planBox(box);
        if (hasErrors(planned.findings)) return;
        made += 1;
        await proveBox(planned);
      }),
      { seed: 11, numRuns: 120 },
    );
    // enough of what is drawn can be built, or the generator proves nothing
    expect(made).toBeGreaterThan(20);
  }, 120_000);
});
