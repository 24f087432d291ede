import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";
import { having, proveDrawn } from "./proveDrawn.js";
import { removableBoxes } from "./removables.js";

/** Proves a box 150 wide of these corners, seen from the side, with what else stands in the job. */
async function proveStanding(corners: readonly (readonly number[])[], more: object): Promise<void> {
  const planned = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { side: corners.map((at, i) => ({ at, side: `wall ${i + 1}` })), width: 150 },
    stands: { x: 100, y: 100, z: 10 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "cnc",
    ...more,
  });
  expect(hasErrors(planned.findings)).toBe(false);
  await proveBox(planned);
}

const bolted = { with: "M6 button", insert: "M6 x 15", every: 80, gasket: 2 };

describe("boxes with a panel that is bolted on", () => {
  it("close on its gasket, overlap nowhere and have the volume of the formula", async () => {
    const made = await proveDrawn(removableBoxes, { seed: 13, numRuns: 24 });
    // enough of what is drawn can be built, or the generator proves nothing
    expect(made.length).toBeGreaterThan(7);
    expect(having(made, "hatch")).toBeGreaterThan(0);
  }, 120_000);

  it("close where a divider stands across the seam of a step, on one wall and the other's end", async () => {
    const step = [
      [0, 90],
      [120, 90],
      [120, 0],
      [270, 0],
      [270, 210],
      [0, 210],
    ];
    const panels = { "wall 3": { bolted } };
    await proveStanding(step, { board: "thin", panels, dividers: [{ across: "height", at: 87 }] });
  });

  it("have battens in their corners that end before those under the panel, round a corner that is cut off", async () => {
    const cutOff = [
      [0, 60],
      [60, 0],
      [300, 0],
      [300, 240],
      [240, 300],
      [60, 300],
      [0, 240],
    ];
    await proveStanding(cutOff, {
      panels: { "wall 7": { bolted } },
      battens: [{ along: ["wall 5 + left"], wide: 18 }],
    });
  });

  it("hold their air and no more where the cover of a hatch lies on a wall that leans", async () => {
    const raked = [
      [0, 0],
      [400, 0],
      [250, 300],
      [0, 300],
    ];
    await proveStanding(raked, { hatch: { in: "wall 2", size: "40 x 60", with: "M6 button", gasket: 2 } });
  });
});
