import { describe, expect, it } from "vitest";
import { compose, place } from "../../../../src/geometry/frame.js";
import { insideClosed } from "../../../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../../../src/plan/checks/netVolume.js";
import { partsApart } from "../../../../src/plan/checks/partsApart.js";
import { tubesFit } from "../../../../src/plan/checks/tubesFit.js";
import { starterShop } from "../../../../src/shop/starter.js";
import { planBox } from "../../../property/boxes.js";

const t = 18.2;

/** A box of 700 x 400 x 300 with a port of tube 90 outside, 200 long, in the middle of its front. */
function ported(more: object) {
  const planned = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { width: 700, depth: 400, height: 300 },
    "round ports": [{ in: "front", outside: 90, long: 200, ...more }],
    stands: { x: 100, y: 100, z: 10 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "cnc",
  });
  const { job, plan, findings } = planned;
  const partOf = (role: string) => plan.built.parts.find((part) => part.role === role)!;
  return {
    findings,
    plan,
    partOf,
    term: (what: string) => plan.built.air[0]!.terms.find((each) => each.what === what)?.litres,
    /** From the outside of the front, y being forward, to a part's face. */
    behindFront: (role: string) => 500 - place(compose(plan.frames[0]![1], partOf(role).at), [0, 0, 0])[1],
    checked: async () => {
      const checks = [insideClosed, netVolume, partsApart, tubesFit];
      return (await Promise.all(checks.map((check) => check.run(job, starterShop(), plan)))).flat();
    },
  };
}

describe("blocks round a port", () => {
  it("stand behind its wall and at its end, and take what they are less their holes", async () => {
    const box = ported({ blocks: { outer: { across: 150 }, inner: { across: 130, round: true, board: "thin" } } });
    expect(box.behindFront("port block.1")).toBeCloseTo(t, 9);
    // its face looks out of the tube, and it is flush with its end
    expect(box.behindFront("port block.2")).toBeCloseTo(200, 9);
    expect(box.term("port block 1")).toBeCloseTo((-t * (150 ** 2 - Math.PI * 45 ** 2)) / 1e6, 9);
    expect(box.term("port block 2")).toBeCloseTo((-12.1 * Math.PI * (65 ** 2 - 45 ** 2)) / 1e6, 9);
    expect(await box.checked()).toEqual([]);
    const steps = box.plan.built.steps.map(({ id }) => id);
    expect(steps).toContain("box:port blocks outer");
    // with a block on its end the tube no longer goes in from outside
    expect(steps).toContain("box:ports inside");
  });

  it("stand square to the end of an elbow, and are as wide in the middle as a flare", async () => {
    const elbow = { after: 60, radius: 60, to: "left" };
    const box = ported({
      long: 240,
      elbow,
      flares: { inner: { mouth: 110, long: 15 } },
      blocks: { inner: { across: 130 } },
    });
    const { at, features } = box.partOf("port block.1");
    const [x, y, z] = place({ ...at, origin: [0, 0, 0] }, [0, 0, 1]);
    // left as seen from the front, which looks back at the box, is to its right
    expect([x, y, z].map((each) => Math.round(each * 1e9) / 1e9 + 0)).toEqual([1, 0, 0]);
    const hole = features[1]!.cut;
    expect(hole.kind === "opening" && hole.region.outer.map((corner) => corner.x)).toContain(130 / 2 + 55);
    expect(await box.checked()).toEqual([]);
  });

  it("must be wide enough for their holes, and the tube long enough for them", () => {
    const codes = (more: object) => ported(more).findings.map(({ code, at }) => [code, at[0]?.path.at(-1)]);
    expect(codes({ blocks: { outer: { across: 95 } } })).toContainEqual(["port-sizes", "across"]);
    expect(codes({ long: 36, blocks: { outer: { across: 150 }, inner: { across: 150 } } })).toContainEqual([
      "port-sizes",
      "long",
    ]);
  });
});
