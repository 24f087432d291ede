import { describe, expect, it } from "vitest";
import { type BoxSpec, planBox } from "../../../property/boxes.js";

const made = (spec: BoxSpec) =>
  planBox({
    kind: "enclosure",
    board: "thick",
    "cut by": "cnc",
    stands: { x: 10, y: 10 },
    outside: { width: 500, depth: 420, height: 300 },
    ...spec,
  }).plan.built;
const screws = (spec: BoxSpec) => [...new Set(made(spec).axes.map(({ fastener }) => fastener))];

describe("joint screws", () => {
  it("are as long as their stack asks: twice the board, and 25 of bite beyond what they pass", () => {
    // 18.2 + 25 = 43.2: the next on hand is 45
    expect(screws({})).toEqual(["4.0 x 45 screw"]);
    // let in 9, a screw passes 9.2: 34.2, but twice the board is 36.4: 40
    expect(screws({ joints: { form: "rebate", deep: 9 } })).toEqual(["4.0 x 40 screw"]);
    // through the thin top 12.1 + 25 = 37.1: 40
    expect(screws({ panels: { top: { board: "thin" } } }).sort()).toEqual(["4.0 x 40 screw", "4.0 x 45 screw"]);
  });

  it("bite a millimetre less deep than their pilots go", () => {
    const front = made({}).parts.find(({ role }) => role === "front")!;
    const pilot = front.features.find(({ side }) => typeof side !== "string")!.cut;
    expect(pilot).toMatchObject({ kind: "hole", depth: expect.closeTo(45 - 18.2 + 1, 9), below: 9.1 });
  });

  it("stay out of mitres and of corners that are not square", () => {
    expect(screws({ joints: { form: "mitre" } })).toEqual([]);
    const side = [
      [0, 0],
      [320, 0],
      [220, 300],
      [0, 300],
    ].map((at) => ({ at }));
    const raked = made({ outside: { side, width: 500 } }).axes.map(({ id }) => id);
    expect(raked.some((id) => id.includes("front.bottom") || id.includes("bottom.front"))).toBe(false);
    expect(raked.some((id) => id.includes("left.front"))).toBe(true);
  });
});
