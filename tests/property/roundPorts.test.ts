import { describe, expect, it } from "vitest";
import { proveDrawn } from "./proveDrawn.js";
import { provePorted } from "./roundPortProof.js";
import { portedBoxes } from "./roundPorts.js";

describe("boxes with ports of tube and dowels", () => {
  it("are closed, and hold what the formulas say: each port alone as turned on a lathe, the air as measured", async () => {
    // enough of what is drawn can be built, or the generator proves nothing
    expect(await proveDrawn(portedBoxes, { seed: 13, numRuns: 40 }, provePorted)).toBeGreaterThan(14);
  }, 120_000);
});
