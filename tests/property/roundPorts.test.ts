import { describe, expect, it } from "vitest";
import type { BoxSpec } from "./boxes.js";
import { having, proveDrawn } from "./proveDrawn.js";
import { provePorted } from "./roundPortProof.js";
import { portedBoxes } from "./roundPorts.js";

describe("boxes with ports of tube and dowels", () => {
  it("are closed, and hold what the formulas say: each port alone as turned on a lathe, the air as measured", async () => {
    const made = await proveDrawn(portedBoxes, { seed: 13, numRuns: 24 }, provePorted);
    // enough of what is drawn can be built, or the generator proves nothing
    expect(made.length).toBeGreaterThan(8);
    const ports = made.flatMap((box) => box["round ports"] as readonly BoxSpec[]);
    for (const key of ["flares", "elbow", "wall", "blocks"]) expect(having(ports, key), key).toBeGreaterThan(1);
    expect(having(made, "dowels")).toBeGreaterThan(1);
  }, 120_000);
});
