import { describe, expect, it } from "vitest";
import { rectangle } from "../../../src/geometry/shapes.js";
import type { Part } from "../../../src/model/part.js";
import { bevelCuts } from "../../../src/nest/saw/bevels.js";
import { blankPart, orderOf, plain } from "../../property/nestOrders.js";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A panel 300 x 100 at its face, 18 thick, its lower side bevelled; the back 10.392 wider for a bevel of -30 degrees. */
function bevelled(degrees: number): Part {
  const face = { outer: rectangle(0, 0, 300, 100, "side").map((v, i) => ({ ...v, by: `side.${i}` })), holes: [] };
  const blank = plain(300, 100 + Math.max(0, -18 * Math.tan(rad(degrees))));
  const edges = { "side.0": { bevel: rad(degrees), finish: { kind: "bare" as const }, flush: 0 } };
  return blankPart("panel", "one", blank, { profile: face, edges });
}

const cutOf = (degrees: number) => {
  const part = bevelled(degrees);
  const { process } = orderOf([part], {}, () => ({ method: "saw" }));
  return bevelCuts([part], process, 7);
};

describe("a bevel", () => {
  it("with the back smaller is cut back down, the fence at the back's own width at the table", () => {
    // 100 - 18 tan 30 = 89.608
    expect(cutOf(30)).toMatchObject([
      { number: 7, tilt: rad(30), down: "back", setting: expect.closeTo(89.608, 3), fresh: true },
    ]);
  });

  it("with the face smaller is cut face down, the fence at the face's width", () => {
    expect(cutOf(-30)).toMatchObject([{ tilt: rad(30), down: "face", setting: expect.closeTo(100, 6) }]);
  });

  it("is none where the edge is square", () => {
    expect(cutOf(0)).toEqual([]);
  });
});
