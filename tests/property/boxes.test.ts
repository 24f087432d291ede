import { describe, expect, it } from "vitest";
import { boxes } from "./boxes.js";
import { proveDrawn } from "./proveDrawn.js";

describe("boxes of all forms", () => {
  it("close, touch where they are joined, overlap nowhere and have the volume of the formula", async () => {
    // most of what is drawn can be built, or the generator proves nothing
    expect((await proveDrawn(boxes, { seed: 7, numRuns: 50 })).length).toBeGreaterThan(30);
  }, 60_000);
});
