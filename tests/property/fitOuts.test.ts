import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";
import { fittedBoxes } from "./fitOuts.js";
import { proveDrawn } from "./proveDrawn.js";

describe("boxes with dividers, braces and slot ports", () => {
  it("have chambers that are closed, boards that meet and overlap nowhere, and the volumes of the formulas", async () => {
    // enough of what is drawn can be built, or the generator proves nothing
    expect((await proveDrawn(fittedBoxes, { seed: 11, numRuns: 120 })).length).toBeGreaterThan(20);
  }, 120_000);

  it("take no screw through a wall that would break out at its bevelled edge", async () => {
    const side = [
      [0, 0],
      [240, 0],
      [300, 60],
      [300, 303],
      [0, 303],
    ].map((at) => ({ at }));
    const planned = planBox({
      kind: "enclosure",
      board: "thick",
      outside: { side, width: 150 },
      joints: { form: "square" },
      dividers: [{ across: "height", at: 75 }],
      stands: { x: 100, y: 100, z: 10 },
      "held by": { straps: 2, to: "rings" },
      "cut by": "cnc",
    });
    expect(hasErrors(planned.findings)).toBe(false);
    await proveBox(planned);
  });
});
