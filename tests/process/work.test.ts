import { describe, expect, it } from "vitest";
import { circle } from "../../src/geometry/shapes.js";
import type { Bit } from "../../src/model/shop.js";
import { bits, cut, feature, hole, opening, panel } from "./benchParts.js";

const edge = { kind: "edge", along: ["front"], width: 6, depth: 6, angle: Math.PI / 4 } as const;
const chamfer = feature("chamfer", { ...edge, form: "chamfer" });
const byOf = (part: ReturnType<typeof panel>, shop = {}) => cut(part, "cnc", shop).work.map(({ by }) => by);
const cone = (more: Partial<Bit>): Bit => ({ kind: "chamfer", d: 25, angle: Math.PI / 2, ...more });

describe("the machine", () => {
  it("never gets what a saw, a hand router or the bench must do, and each says why", () => {
    const part = panel(
      [
        feature("round", { ...edge, form: "roundOver" }),
        feature("pilot", hole(5, 30, 9), { side: { edge: "front" } }),
        feature("later", opening(circle({ x: 200, y: 150 }, 60, "later")), { stage: "assembled" }),
        feature("insert", hole(5, 10), { stage: "assembled" }),
        feature("loose", hole(5, 10), { stage: "bench" }),
      ],
      { edges: { front: { bevel: 0.1, flush: 3, finish: { kind: "bare" } } } },
    );
    const { work } = cut(part, "cnc");
    expect(work.map(({ by }) => by)).toEqual(["cnc", "hand", "bench", "hand", "bench", "bench", "saw", "hand"]);
    for (const { why } of work) expect(why).not.toBe("");
    expect(work.at(-2)).toMatchObject({ by: "saw", why: "bevel along front" });
    expect(work.at(-1)?.why).toBe("trimmed flush along front");
  });

  it("cuts a chamfer with a cone that has no bearing, reaches in far enough and has its slope; else the hand router does", () => {
    const with_ = (bit: Bit) => byOf(panel([chamfer]), { bits: { "8 straight": bits["8 straight"], cone: bit } })[1];
    expect(with_(cone({}))).toBe("cnc");
    expect(with_(cone({ d: 12 }))).toBe("cnc");
    expect(with_(cone({ d: 11.9 }))).toBe("hand");
    expect(with_(cone({ bearing: 8 }))).toBe("hand");
    expect(with_(cone({ angle: Math.PI / 3 }))).toBe("hand");
  });

  it("leaves a chamfer on the side that lies down to the hand router, which takes the cone with a bearing", () => {
    const groove = { kind: "groove", path: [], closed: false, width: 4, depth: 4 } as const;
    const both = { bits: { ...bits, "45 bearing": cone({ d: 30, bearing: 10 }) } };
    const made = cut(panel([chamfer, feature("groove", groove, { side: "back" })]), "cnc", both);
    expect(made.work[1]).toMatchObject({ by: "hand", tool: "45 bearing" });
  });

  it("engraves a mark where a v bit is on hand, and leaves it to a pencil where none is", () => {
    const mark = panel([feature("name", { kind: "mark", text: "B1", at: { x: 20, y: 20 } })]);
    expect(byOf(mark, { bits: { ...bits, v: { kind: "v", d: 6, angle: 1 } } })).toEqual(["cnc", "cnc"]);
    expect(byOf(mark)).toEqual(["cnc", "bench"]);
  });
});
