import { describe, expect, it } from "vitest";
import { extentsOf } from "../../src/geometry/measure.js";
import { planBox } from "../property/boxes.js";

// A raked box worked by hand: 18.2 mm of board, seen from the right 300 deep at the bottom, 200 at the top, 400 high; 400
// wide. The rake leans back by 1 in 4, so square to it a board of t takes t x sqrt(1 + 1/16) along the level.
// Source of the arithmetic: plane trigonometry; areas of trapezoids.

const t = 18.2;
const level = t * Math.sqrt(1 + 1 / 16);
const width = 400;
const span = width - 2 * t;
const gap = 40;
/** Where the inside of the rake lies at a height. */
const rakeAt = (y: number) => 300 - y / 4 - level;

function raked(port: object) {
  const { plan, findings } = planBox({
    kind: "enclosure",
    board: "thick",
    outside: {
      side: [
        { at: [0, 0], side: "bottom" },
        { at: [300, 0], side: "rake" },
        { at: [200, 400], side: "top" },
        { at: [0, 400], side: "back" },
      ],
      width,
    },
    laps: ["rake", "left", "right", "bottom", "top", "back"],
    "slot ports": [{ in: "rake", beside: "bottom", gap, ...port }],
    "held by": { straps: 2, to: "rings" },
    stands: { x: 10, y: 10 },
    "cut by": "cnc",
  });
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const term = (what: string) => plan.built.air[0]!.terms.find((each) => each.what === what)!.litres;
  const sizeOf = (role: string) => {
    const part = plan.built.parts.find((each) => each.role === role)!;
    const { min, max } = extentsOf(part.profile.outer);
    return [max.x - min.x, max.y - min.y].sort((a, b) => a - b);
  };
  return { term, sizeOf };
}

describe("a slot port in a raked box, worked by hand", () => {
  it("runs along the bottom by its length on the middle, from the outside of the rake", () => {
    const { term, sizeOf } = raked({ long: 150 });
    // the middle lies at 18.2 + 20 = 38.2, the outside of the rake there at 300 - 9.55 = 290.45
    const end = 300 - (t + gap / 2) / 4 - 150;
    const [low, high] = [rakeAt(t) - end, rakeAt(t + gap) - end];
    expect(term("port 1 air")).toBeCloseTo((-gap * ((low + high) / 2) * span) / 1e6, 9);
    const back = rakeAt(t + gap + t) - end;
    expect(term("port 1 panels")).toBeCloseTo((-t * ((high + back) / 2) * span) / 1e6, 9);
    expect(sizeOf("port.1")[0]).toBeCloseTo(high, 9);
    expect(sizeOf("port.1")[1]).toBeCloseTo(span, 9);
  });

  it("turns up the back: both middles meet at the corner, and the second panel stands on the first", () => {
    const { term, sizeOf } = raked({ long: 400, turns: true });
    const middle = t + gap / 2;
    const before = 300 - middle / 4 - middle;
    const top = middle + 400 - before;
    expect(sizeOf("port.1")[0]).toBeCloseTo(rakeAt(t + gap) - (t + gap), 9);
    expect(sizeOf("port turn.1")[0]).toBeCloseTo(top - (t + gap + t), 9);
    // the L of air: along the bottom from the back's inside to the rake's, and up the back above that
    const along = gap * ((rakeAt(t) + rakeAt(t + gap)) / 2 - t);
    const up = gap * (top - (t + gap));
    expect(term("port 1 air")).toBeCloseTo((-(along + up) * span) / 1e6, 9);
  });

  it("with square corners takes its gap times its length along the middle", () => {
    // an L of legs a and b and width g has the area g (a + b - g), and its middle is a + b - g long
    const { plan } = planBox({
      kind: "enclosure",
      board: "thick",
      outside: { width: 500, depth: 400, height: 300 },
      laps: ["front", "top", "bottom", "rear", "left", "right"],
      "slot ports": [{ in: "front", beside: "right", gap: 30, long: 500, turns: true }],
      "held by": { straps: 2, to: "rings" },
      "cut by": "cnc",
    });
    const air = plan.built.air[0]!.terms.find(({ what }) => what === "port 1 air")!.litres;
    expect(air).toBeCloseTo((-30 * (500 - t) * (300 - 2 * t)) / 1e6, 9);
  });
});
