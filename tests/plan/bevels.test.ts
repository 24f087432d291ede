import { describe, expect, it } from "vitest";
import { loadSolids } from "../../src/geometry/solids.js";
import { boardOf } from "../../src/plan/solids.js";
import { standingParts } from "../../src/plan/standing.js";
import { planned } from "../pieces/planned.js";

const t = 12.1;
const kernel = await loadSolids();

/** Volume of a bevelled panel of 600 x 100 as it stands, mm3. */
function volumeOf(bevels: unknown): number {
  const lies = { x: 100, y: 100, z: 200 };
  const job = planned([[["pieces", "cover"], { kind: "panel", board: "plate", outline: "600 x 100", bevels, lies }]]);
  const cover = standingParts(job.plan).find(({ part }) => part.id === "cover/panel")!;
  return kernel.within(() => kernel.volumeOf(boardOf(kernel, cover)));
}

/** The prismoidal formula: exact where every section is a rectangle whose sides change evenly (e.g. USACE EM 1110-1-1005). */
const prismoid = (face: readonly [number, number], back: readonly [number, number]) => {
  const middle = ((face[0] + back[0]) / 2) * ((face[1] + back[1]) / 2);
  return (t / 6) * (face[0] * face[1] + 4 * middle + back[0] * back[1]);
};

describe("a bevelled board", () => {
  const run = t * Math.tan(Math.PI / 6);

  it("loses a wedge where its back is smaller", () => {
    expect(volumeOf({ far: { angle: "30deg" } })).toBeCloseTo(prismoid([600, 100], [600, 100 - run]), 0);
  });

  it("is cut from a larger blank where its back is larger", () => {
    expect(volumeOf({ far: { angle: "30deg", wider: "back" } })).toBeCloseTo(prismoid([600, 100], [600, 100 + run]), 0);
  });

  it("keeps to both planes where two bevels meet at a corner", () => {
    const both = { far: { angle: "30deg", wider: "back" }, right: { angle: "45deg" } };
    expect(volumeOf(both)).toBeCloseTo(prismoid([600, 100], [600 - t, 100 + run]), 0);
    const larger = { far: { angle: "30deg", wider: "back" }, right: { angle: "45deg", wider: "back" } };
    expect(volumeOf(larger)).toBeCloseTo(prismoid([600, 100], [600 + t, 100 + run]), 0);
  });
});
