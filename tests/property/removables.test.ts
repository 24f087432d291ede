import { describe, expect, it } from "vitest";
import { hasErrors } from "../../src/input/finding.js";
import { planBox } from "./boxes.js";
import { proveBox } from "./boxProof.js";
import { having, proveDrawn } from "./proveDrawn.js";
import { removableBoxes } from "./removables.js";

/** Proves a box 150 wide of these corners, seen from the side, with a wall on M6 bolts and a gasket of 2. */
async function proveStanding(corners: readonly (readonly number[])[], bolted: string, more: object): Promise<void> {
  const planned = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { side: corners.map((at, i) => ({ at, side: `wall ${i + 1}` })), width: 150 },
    panels: { [bolted]: { bolted: { with: "M6 button", insert: "M6 x 15", every: 80, gasket: 2 } } },
    stands: { x: 100, y: 100, z: 10 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "cnc",
    ...more,
  });
  expect(hasErrors(planned.findings)).toBe(false);
  await proveBox(planned);
}

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
    await proveStanding(step, "wall 3", { board: "thin", dividers: [{ across: "height", at: 87 }] });
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
    await proveStanding(cutOff, "wall 7", { battens: [{ along: ["wall 5 + left"], wide: 18 }] });
  });
});
