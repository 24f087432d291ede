import { describe, expect, it } from "vitest";
import { runChecks } from "../../../src/plan/checks/checks.js";
import { starterShop } from "../../../src/shop/starter.js";
import { planBox } from "../../property/boxes.js";

/** The rear is screwed into the right side's edge; the driver's cut-out of 140 sits so far from that edge's outside. */
async function codesAt(x: number): Promise<readonly string[]> {
  const { job, plan } = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { width: 400, depth: 400, height: 400 },
    driver: { is: "six", in: "right", at: [x, 200] },
    stands: { x: 100, y: 100 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "cnc",
  });
  return (await runChecks(job, starterShop(), plan)).map(({ code }) => code);
}

describe("a screw into an edge beside an opening", () => {
  it("is told where its pilot runs into the cut-out or leaves less than 3 mm before it, and not beyond", async () => {
    // at the height of its middle: 18.2 of the rear, a pilot of 45 - 18.2 + 1 = 27.8, 2.3 across, then 3 of board and
    // half the cut-out: 18.2 + 27.8 + 1.15 + 3 + 70 = 120.15
    expect(await codesAt(120)).toContain("pilot-near-opening");
    expect(await codesAt(120.3)).not.toContain("pilot-near-opening");
  });
});
