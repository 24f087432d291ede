import { describe, expect, it } from "vitest";
import { compose, frameFromAxes } from "../../src/geometry/frame.js";
import { eachEdge } from "../../src/geometry/measure.js";
import { loadSolids } from "../../src/geometry/solids.js";
import { boardOf } from "../../src/plan/solids.js";
import { type Standing, standingParts } from "../../src/plan/standing.js";
import { planned } from "../pieces/planned.js";
import { planBox } from "../property/boxes.js";

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

/** The walls of a box whose corners lie on an oval, n of them, as they stand. */
function wallsOnOval(n: number, a: number, b: number): readonly Standing[] {
  const plan = Array.from({ length: n }, (_, i) => {
    const t = (i / n) * 2 * Math.PI;
    return { at: [a * Math.cos(t), b * Math.sin(t)], side: `wall ${i + 1}` };
  });
  const { plan: made } = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { plan, height: 580 },
    stands: { x: 100, y: 100, z: 10 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "cnc",
  });
  return standingParts(made).filter(({ part }) => part.role.startsWith("wall"));
}

/** How far the solid of a board stands out beyond the planes that its blade saws, mm. */
function beyondSawnPlanes(board: Standing): number {
  let most = 0;
  eachEdge(board.part.profile.outer, (a, b) => {
    const bevel = board.part.edges[a.by]?.bevel ?? 0;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    // z out of the sawn plane, which runs through the edge of the face
    const across = [uy * Math.sin(bevel), -ux * Math.sin(bevel), Math.cos(bevel)] as const;
    const plane = compose(board.at, frameFromAxes([a.x, a.y, 0], across, [-ux, -uy, 0]));
    most = Math.max(
      most,
      kernel.within(() => kernel.extentsOf(boardOf(kernel, board), plane)!.max[2]),
    );
  });
  return most;
}

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

  it("has nothing left beyond its sawn planes, however it is turned", () => {
    for (const [n, a, b] of [
      [8, 230, 290],
      [8, 271, 253],
      [7, 254, 362],
      [6, 373, 319],
    ] as const) {
      const walls = wallsOnOval(n, a, b);
      expect(walls).toHaveLength(n);
      for (const wall of walls) expect(beyondSawnPlanes(wall), `${wall.part.role} of ${n}`).toBeLessThan(1e-6);
    }
  });
});
