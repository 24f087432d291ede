import { describe, expect, it } from "vitest";
import { proveDrawn } from "./proveDrawn.js";
import { removableBoxes } from "./removables.js";

describe("boxes with a panel that is bolted on", () => {
  it("close on its gasket, overlap nowhere and have the volume of the formula", async () => {
    // most of what is drawn can be built, or the generator proves nothing
    expect(await proveDrawn(removableBoxes, { seed: 13, numRuns: 20 })).toBeGreaterThan(7);
  }, 120_000);
});
