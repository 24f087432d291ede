import { describe, expect, it } from "vitest";
import { netLitres } from "../../../../src/model/volume.js";
import { type BoxSpec, planBox } from "../../../property/boxes.js";

const t = 18.2;
const square = (more: object): BoxSpec => ({
  kind: "enclosure",
  board: "thick",
  outside: { width: 700, depth: 400, height: 300 },
  "held by": { straps: 2, to: "rings" },
  "cut by": "cnc",
  ...more,
});
const planOf = (more: object) => {
  const { plan, findings } = planBox(square(more));
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  return plan;
};
const inside = { depth: 400 - 2 * t, height: 300 - 2 * t };

describe("the chambers of a box", () => {
  it("have the volumes on both sides of a divider, whose nearer side is where the job says", () => {
    const { air } = planOf({ dividers: [{ across: "width", at: 300 }] }).built;
    expect(air.map(({ name }) => name)).toEqual(["box left", "box right"]);
    expect(netLitres(air[0]!)).toBeCloseTo(((300 - t) * inside.depth * inside.height) / 1e6, 9);
    expect(netLitres(air[1]!)).toBeCloseTo(((700 - t - 300 - t) * inside.depth * inside.height) / 1e6, 9);
  });

  it("are parted again by a second divider that names one of them", () => {
    const dividers = [
      { across: "width", at: 300, between: ["a", "b"] },
      { across: "height", at: 140, between: ["b", "c"] },
    ];
    const { air, parts } = planOf({ dividers }).built;
    expect(air.map(({ name }) => name)).toEqual(["box a", "box b", "box c"]);
    const right = (700 - t - 300 - t) * inside.depth;
    expect(netLitres(air[1]!)).toBeCloseTo((right * (140 - t)) / 1e6, 9);
    expect(netLitres(air[2]!)).toBeCloseTo((right * (300 - t - 140 - t)) / 1e6, 9);
    expect(parts.map(({ role }) => role)).toContain("divider.2");
  });

  it("count the driver and the terminal behind whose place they lie", () => {
    const { air, mounts } = planOf({
      dividers: [{ across: "width", at: "middle" }],
      drivers: [
        { is: "six", in: "top", at: [170, 200] },
        { is: "six", in: "top", at: [530, 200] },
      ],
      terminals: [
        { in: "rear", hole: 50, at: [100, 150], displaces: "0.1 L" },
        { in: "rear", hole: 50, at: [600, 150], displaces: "0.2 L" },
      ],
    }).built;
    expect(mounts.map((mount) => mount.air)).toEqual(["box left", "box right"]);
    const terminal = (i: number) => air[i]!.terms.filter(({ what }) => what.startsWith("terminal"));
    // seen from behind x runs to the right
    expect(terminal(0)).toEqual([{ what: "terminal.1", litres: -0.1, shaped: false }]);
    expect(terminal(1)).toEqual([{ what: "terminal.2", litres: -0.2, shaped: false }]);
  });

  it("reach each its own volume by a free divider and a free size, to a step each", () => {
    const { air } = planOf({
      outside: { width: "free", depth: 400, height: 300 },
      dividers: [{ across: "width", at: "free" }],
      chambers: { left: { net: "22 L" }, right: { net: "31 L" } },
    }).built;
    const step = (0.5 * inside.depth * inside.height) / 1e6;
    expect(Math.abs(netLitres(air[0]!) - 22)).toBeLessThanOrEqual(step / 2 + 1e-9);
    expect(Math.abs(netLitres(air[0]!) + netLitres(air[1]!) - 53)).toBeLessThanOrEqual(step / 2 + 1e-9);
  });

  it("lose to a brace what it is less its windows", () => {
    const { air } = planOf({
      braces: [{ across: "width", at: 300, border: 60, round: 20, windows: 2 }],
    }).built;
    // two openings beside each other along the longer way, a bar of the border's width between
    const [long, short] = [inside.depth - 120, inside.height - 120];
    const rounded = (long - 60) * short - 2 * (4 - Math.PI) * 20 ** 2;
    const brace = air[0]!.terms.find(({ what }) => what === "brace 1")!.litres;
    expect(brace).toBeCloseTo((-t * (inside.depth * inside.height - rounded)) / 1e6, 9);
  });
});
