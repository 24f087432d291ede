import fc from "fast-check";
import { expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { boxes, planBox } from "../property/boxes.js";
import { proveBox } from "../property/boxProof.js";
import { fittedBoxes } from "../property/fitOuts.js";

const runs = 500;

it(`proves ${runs} boxes of all forms closed, joined, clear of each other and of the volume of the formula`, async () => {
  let made = 0;
  await fc.assert(
    fc.asyncProperty(boxes, async (box) => {
      const planned = planBox(box);
      if (hasErrors(planned.findings)) return;
      made += 1;
      await proveBox(planned);
    }),
    { seed: 20261125, numRuns: runs },
  );
  expect(made).toBeGreaterThan(0.6 * runs);
}, 3_600_000);

it("proves five hundred boxes with dividers, braces and slot ports", async () => {
  let made = 0;
  await fc.assert(
    fc.asyncProperty(fittedBoxes, async (box) => {
      const planned = planBox(box);
      if (hasErrors(planned.findings)) return;
      made += 1;
      await proveBox(planned);
    }),
    { seed: 20261126, numRuns: 1800 },
  );
  expect(made).toBeGreaterThanOrEqual(500);
}, 3_600_000);
