import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";
import { removableBoxes } from "./removables.js";

describe("boxes with a panel that is bolted on", () => {
  it("close on its gasket, overlap nowhere and have the volume of the formula", async () => {
    let made = 0;
    await fc.assert(
      fc.asyncProperty(removableBoxes, async (box) => {
        const planned = planBox(box);
        if (hasErrors(planned.findings)) return;
        made += 1;
        await proveBox(planned);
      }),
      { seed: 13, numRuns: 20 },
    );
    // most of what is drawn can be built, or the generator proves nothing
    expect(made).toBeGreaterThan(7);
  }, 120_000);
});
