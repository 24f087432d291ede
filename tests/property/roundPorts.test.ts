import { describe, expect, it } from "vitest";
import { proveDrawn } from "./proveDrawn.js";
import { provePorted } from "./roundPortProof.js";
import { portedBoxes } from "./roundPorts.js";

describe("boxes with ports of tube and dowels", () => {
  it("are closed, and hold what the formulas say: each port alone as turned on a lathe, the air as measured", async () => {
    const drawn = { flares: 0, elbow: 0, blocks: 0 };
    const made = await proveDrawn(portedBoxes, { seed: 13, numRuns: 40 }, async (planned, box) => {
      const isProved = await provePorted(planned, box);
      const [port] = box["round ports"] as readonly object[];
      for (const key of ["flares", "elbow", "blocks"] as const) drawn[key] += isProved && key in port! ? 1 : 0;
      return isProved;
    });
    // enough of what is drawn can be built, or the generator proves nothing
    expect(made).toBeGreaterThan(14);
    expect(Math.min(...Object.values(drawn))).toBeGreaterThan(3);
  }, 120_000);
});
