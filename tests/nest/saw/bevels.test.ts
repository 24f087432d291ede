import { describe, expect, it } from "vitest";
import { rectangle } from "../../../src/geometry/shapes.js";
import type { Part } from "../../../src/model/part.js";
import { inTurn, partBevels } from "../../../src/nest/saw/bevels.js";
import type { Sawing } from "../../../src/nest/saw/sawing.js";
import { blankPart, orderOf, plain } from "../../property/nestOrders.js";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A panel 18 thick, its lower side bevelled; the back 10.392 wider for a bevel of -30 degrees. */
function bevelled(degrees: number, length: number, width: number): Part {
  const face = {
    outer: rectangle(0, 0, length, width, "side").map((v, i) => ({ ...v, by: `side.${i}` })),
    holes: [],
  };
  const blank = plain(length, width + Math.max(0, -18 * Math.tan(rad(degrees))));
  const edges = { "side.0": { bevel: rad(degrees), finish: { kind: "bare" as const }, flush: 0 } };
  return blankPart("panel", "one", blank, { profile: face, edges });
}

const sawing: Sawing = {
  table: { kerf: 3, reach: 660, crossCut: 650, length: 2440, width: 650 },
  track: { kerf: 2, longest: 2700 },
  hold: { length: 300, width: 50 },
  step: 0.5,
  setting: 0.01,
};

function cutOf(degrees: number, length = 300, width = 100, by: Sawing = sawing) {
  const part = bevelled(degrees, length, width);
  const { process } = orderOf([part], {}, () => ({ method: "saw" }));
  return inTurn(partBevels([part], process, by, []));
}

describe("a bevel", () => {
  it("with the back smaller is cut back down, the fence at the back's own width at the table", () => {
    // 100 - 18 tan 30 = 89.608
    expect(cutOf(30)).toMatchObject([{ tilt: rad(30), down: "back", setting: expect.closeTo(89.608, 3), fresh: true }]);
  });

  it("with the face smaller is cut face down, the fence at the face's width", () => {
    expect(cutOf(-30)).toMatchObject([{ tilt: rad(30), down: "face", setting: expect.closeTo(100, 6) }]);
  });

  it("along the shorter side goes across on the sled, against the stop block", () => {
    expect(cutOf(45, 200, 500)).toMatchObject([{ saw: "table", way: "cross-cut", setting: expect.closeTo(482, 6) }]);
    expect(cutOf(45, 500, 200)).toMatchObject([{ saw: "table", way: "rip", setting: expect.closeTo(182, 6) }]);
  });

  it("of what one person does not bring to the table saw is cut along the track, at the edge of the larger side", () => {
    expect(cutOf(45, 2000, 700)).toMatchObject([{ saw: "track", setting: 700 }]);
    const { track: _, ...bare } = sawing;
    expect(cutOf(45, 2000, 700, bare)).toMatchObject([{ saw: "table", trouble: "reach" }]);
    expect(cutOf(45, 2000, 678, bare)[0]!.trouble).toBeUndefined();
  });

  it("of the same tilt and setting needs nothing set anew, however the tilt was worked out", () => {
    const parts = [30, 30 + 1e-12].map((degrees) => bevelled(degrees, 300, 100));
    const { process } = orderOf(parts, {}, () => ({ method: "saw" }));
    expect(inTurn(partBevels(parts, process, sawing, [])).map(({ fresh }) => fresh)).toEqual([true, false]);
  });

  it("of a part that is too small to hold says so", () => {
    expect(cutOf(45, 299, 100)[0]!.trouble).toBe("small");
    expect(cutOf(45, 300, 100)[0]!.trouble).toBeUndefined();
  });

  it("is none where the edge is square", () => {
    expect(cutOf(0)).toEqual([]);
  });
});
