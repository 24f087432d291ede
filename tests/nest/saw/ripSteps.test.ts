import { describe, expect, it } from "vitest";
import type { RipCut } from "../../../src/model/rip.js";
import { ripSteps } from "../../../src/nest/saw/ripSteps.js";

/** Cuts of 100 off one piece of 420 x 300, one after another; along the track a cut's way is that of the longer side. */
function cutsOf(saw: RipCut["saw"], ways: readonly RipCut["way"][]): readonly RipCut[] {
  return ways.map((way, i): RipCut => {
    const width = 420 - 103 * i;
    const piece = { x: 0, y: 103 * i, length: 300, width };
    return {
      number: i + 1,
      sheet: "one 1",
      saw,
      way,
      along: true,
      setting: 100,
      kerf: 3,
      fresh: i === 0,
      piece: { ...piece, name: i === 0 ? "one 1" : `${i}b`, becomes: "cut" },
      off: { ...piece, name: `${i + 1}a`, width: 100, becomes: "left" },
      rest: { ...piece, name: `${i + 1}b`, y: 103 * (i + 1), width: width - 103, becomes: "cut" },
    };
  });
}

describe("the steps of a rip list", () => {
  it("are one where one line along the track is used again, though the piece becomes shorter than it is wide", () => {
    expect(ripSteps(cutsOf("track", ["cross-cut", "cross-cut", "rip"])).map(({ cuts }) => cuts.length)).toEqual([3]);
  });

  it("are two where a fence follows a stop block", () => {
    expect(ripSteps(cutsOf("table", ["cross-cut", "cross-cut", "rip"])).map(({ cuts }) => cuts.length)).toEqual([2, 1]);
  });
});
