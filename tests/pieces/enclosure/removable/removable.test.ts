import { describe, expect, it } from "vitest";
import { extentsOf } from "../../../../src/geometry/measure.js";
import type { Change } from "../../planned.js";
import { codesOf, type Planned, partNamed, planned } from "../../planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];

/** The starter's box, empty: 700 x 400 x 300 of 18.2 board. */
const empty: readonly Change[] = [
  ...["ring", "plate"].map((name): Change => [["pieces", name], undefined]),
  ...["driver", "terminal", "flush", "net"].map((key) => box(key, undefined)),
  box("stands", { x: 100, y: 30 }),
  box("outside", { width: 700, depth: 400, height: 300 }),
];
const bolted = { with: "M6 button", gasket: 3 };
const lid = (more: object = {}) => planned([...empty, box("panels", { top: { bolted: { ...bolted, ...more } } })]);

const sizeOf = (plan: Planned, role: string) => {
  const { min, max } = extentsOf(partNamed(plan, `box/${role}`).profile.outer);
  return [max.x - min.x, max.y - min.y];
};
const roles = ({ plan }: Planned) => plan.built.parts.map(({ role }) => role);

describe("a panel that is bolted on", () => {
  const box700 = lid();

  it("leaves the outside as it is asked for: its neighbours are lower by the clamped gasket", () => {
    expect(box700.findings.filter(({ severity }) => severity === "error")).toEqual([]);
    expect(sizeOf(box700, "top")).toEqual([700, 400]);
    // 300 less two boards of 18.2 and the gasket
    expect(sizeOf(box700, "front")[1]).toBeCloseTo(300 - 2 * 18.2 - 3, 9);
  });

  it("lies on battens of board, butted in a ring, 30 wide", () => {
    // inside 663.6 x 363.6; each runs from the one before to the wall
    const sizes = [1, 2, 3, 4].map((n) => sizeOf(box700, `batten.top.${n}`).toSorted((a, b) => a - b));
    expect(sizes).toEqual(
      [633.6, 333.6, 633.6, 333.6].map((long) => [30, long].map((size) => expect.closeTo(size, 9))),
    );
  });

  it("takes its battens of the air and gives back the gap within the gasket, worked by hand", () => {
    const terms = box700.plan.built.air[0]!.terms.map(({ what, litres }) => [what, litres] as const);
    expect(terms).toEqual([
      ["gross inside", expect.closeTo((663.6 * 363.6 * (300 - 2 * 18.2 - 3)) / 1e6, 9)],
      ["battens under top", expect.closeTo((-2 * (633.6 + 333.6) * 30 * 18.2) / 1e6, 9)],
      ["gap within the gasket of top", expect.closeTo((603.6 * 303.6 * 3) / 1e6, 9)],
    ]);
  });

  it("has neither screws nor glue at its edges", () => {
    expect(box700.plan.built.joints.filter(({ laps, into }) => [laps, into].includes("box/top" as never))).toEqual([]);
    const fasteners = box700.plan.built.axes.filter(({ stack }) => stack.some(({ part }) => part === "box/top"));
    expect(new Set(fasteners.map(({ fastener }) => fastener))).toEqual(new Set(["M6 x 30 button"]));
  });

  it("shares each axis between a clearance hole and an insert's hole that stays blind", () => {
    const axes = box700.plan.built.axes.filter(({ id }) => id.startsWith("box:bolt.top."));
    // rows of 633.6 and 333.6 with 25 at their ends, at most 150 apart: 5 and 3 each
    expect(axes).toHaveLength(16);
    for (const axis of axes) {
      expect(axis.stack.map(({ role }) => role)).toEqual(["clearance", "thread"]);
      const holes = axis.stack.map(({ part, feature }) => {
        const { cut } = partNamed(box700, part).features.find(({ id }) => id === feature)!;
        return cut.kind === "hole" ? [cut.d, cut.depth] : [];
      });
      // ISO 273, medium row; the longest insert that leaves 3 of 18.2 is 12 long
      expect(holes).toEqual([
        [6.6, "through"],
        [9, 13],
      ]);
    }
  });

  it("glues a second batten behind the first where the insert would come out of one", () => {
    const deep = lid({ insert: "M6 x 15" });
    expect(roles(deep)).toContain("batten.top.1.layer.2");
    const [, battens] = deep.plan.built.air[0]!.terms;
    expect(battens!.litres).toBeCloseTo((-2 * 2 * (633.6 + 333.6) * 30 * 18.2) / 1e6, 9);
  });

  it("takes bolts that start with the gasket loose and do not bottom with it clamped", () => {
    const bolts = (gasket: object) =>
      lid({ gasket }).plan.built.buys.find(({ item }) => item.startsWith("M6"))?.item ?? "none";
    // 18.2 + 1 + 6 of thread; 18.2 + 8 + 1 to start; no more than 18.2 + 1 + 13 - 1
    expect(bolts({ loose: 2, clamped: 1 })).toBe("M6 x 30 button");
    expect(codesOf(lid({ gasket: { loose: 14, clamped: 1 } }))).toContain("no-bolt-length");
  });

  it("buys bolts, inserts and the gasket's length", () => {
    const { buys } = box700.plan.built;
    expect(buys).toContainEqual({ item: "M6 x 30 button", count: 16 });
    expect(buys).toContainEqual({ item: "M6 x 12 threaded insert", count: 16 });
    // round the middle between 663.6 x 363.6 and 603.6 x 303.6: 1934.4
    expect(buys).toContainEqual({ item: "gasket, closed-cell, 6 mm loose, 3 mm clamped", count: 2, unit: "m" });
  });

  it("comes off again from between its neighbours: 1 mm stays free all round", () => {
    const between = planned([
      ...empty,
      box("laps", ["bottom", "front", "rear", "left", "right", "top"]),
      box("panels", { top: { bolted } }),
    ]);
    expect(sizeOf(between, "top")).toEqual([700 - 2 * 18.2 - 2, 400 - 2 * 18.2 - 2].map((n) => expect.closeTo(n, 9)));
    expect(sizeOf(between, "front")[1]).toBeCloseTo(300 - 18.2, 9);
  });

  it("parts its battens at a divider and at a brace", () => {
    const parted = planned([
      ...empty,
      box("panels", { top: { bolted } }),
      box("dividers", [{ across: "width", at: 300 }]),
      box("braces", [{ across: "width", at: 500, in: "right" }]),
    ]);
    expect(codesOf(parted)).toEqual(["divider-on-gasket"]);
    const battens = roles(parted).filter((role) => role.startsWith("batten."));
    // left of the divider rear, front and left; right of it rear and front twice, and right
    expect(battens).toHaveLength(8);
  });

  it("says at the bench what stays off, and how it is bolted on", () => {
    const names = box700.plan.built.steps.map(({ id }) => id);
    const order = ["leave off top", "glue", "battens of top", "inserts of top", "bolt top", "fix"];
    expect(names.filter((id) => order.includes(id.slice(4)))).toEqual(order.map((name) => `box:${name}`));
  });
});
