import { describe, expect, it } from "vitest";
import { rectangle } from "../../../src/geometry/shapes.js";
import type { Part } from "../../../src/model/part.js";
import { nestParts } from "../../../src/nest/nest.js";
import { remainderOf } from "../../../src/nest/remainder.js";
import { blankPart, board, orderOf, plain } from "../../property/nestOrders.js";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A part 18 thick; degrees of its bevels by side, above zero with the back smaller. */
function part(name: string, length: number, width: number, bevels: Readonly<Record<string, number>> = {}): Part {
  const face = { outer: rectangle(0, 0, length, width, ["near", "right", "far", "left"]), holes: [] };
  const edges = Object.fromEntries(
    Object.entries(bevels).map(([side, degrees]) => [
      side,
      { bevel: rad(degrees), finish: { kind: "bare" as const }, flush: 0 },
    ]),
  );
  return blankPart(name, "one", plain(length, width), { profile: face, edges });
}

/** Parts that are sawn from one offcut without trim, by a kerf of 3.2; they are not turned. */
function nestedOn(parts: readonly Part[], length: number, width: number) {
  const offcuts = [{ name: "A", length, width, trim: 0 }];
  const order = orderOf(parts, { one: board({ offcuts }) }, () => ({ method: "saw", gap: 3.2, turns: [0] }));
  const saw = { kerf: 3.2, step: 0.5, "longest cross-cut": 650, "longest rip": 660 };
  const shop = { ...order.shop, saw, "track saw": undefined };
  const outcome = nestParts(order.job, shop, order.plan, order.process, { seed: 1, iterations: 10 });
  return { ...outcome, order: { ...order, shop } };
}

function listOf(parts: readonly Part[], length: number, width: number) {
  const { value, findings } = nestedOn(parts, length, width);
  const { cuts, bevels } = value!.rips!;
  const names = [
    ...cuts.map(({ number, way }) => ({ number, what: way as string })),
    ...bevels.map(({ number, piece }) => ({ number, what: piece ? "bevel" : "alone" })),
  ];
  const ways = names.toSorted((a, b) => a.number - b.number).map(({ what }) => what);
  return { cuts, bevels, ways, placed: value!.sheets[0]!.placed, codes: findings.map(({ code }) => code) };
}

describe("a bevel that the parts of a strip share", () => {
  it("is cut along the strip before it is crossed: smaller side down, the fence at the strip less 18 tan 30", () => {
    const cleats = ["a", "b", "c"].map((name) => part(name, 200, 80, { far: 30 }));
    const { ways, bevels, cuts, codes } = listOf(cleats, 800, 120);
    expect(ways).toEqual(["rip", "bevel", "cross-cut", "cross-cut", "cross-cut"]);
    expect(bevels).toMatchObject([
      { number: 2, way: "rip", side: "upper", down: "under", run: 800, across: 80, piece: { name: "1a" }, fresh: true },
    ]);
    expect(bevels[0]!.setting).toBeCloseTo(80 - 18 / Math.sqrt(3), 9);
    expect(bevels[0]!.edges.length).toBe(3);
    // the blade is set upright again, once
    expect(cuts.map(({ upright }) => upright ?? false)).toEqual([false, true, false, false]);
    expect(cuts.at(-1)!.rest!.bevelled).toMatchObject([{ side: "upper", less: expect.closeTo(18 / Math.sqrt(3), 9) }]);
    expect(codes).not.toContain("bevel-too-small");
  });

  it("lies along one side of it, however the parts were drawn", () => {
    const { ways, bevels, placed } = listOf(
      [part("a", 200, 80, { far: 30 }), part("b", 200, 80, { near: 30 })],
      600,
      120,
    );
    expect(ways).toEqual(["rip", "bevel", "cross-cut", "cross-cut"]);
    expect(bevels[0]!.edges.map(({ edge }) => edge).toSorted()).toEqual(["far", "near"]);
    expect(placed.map(({ turn }) => turn).toSorted()).toEqual([0, Math.PI]);
  });

  it("of two sides is cut on both, the second at the same setting, since the larger side still reaches the fence", () => {
    const both = ["a", "b"].map((name) => part(name, 200, 80, { far: 45, near: 45 }));
    const { bevels } = listOf(both, 600, 120);
    expect(bevels.map(({ fresh }) => fresh)).toEqual([true, false]);
    for (const { setting } of bevels) expect(setting).toBeCloseTo(80 - 18, 9);
    expect(bevels.map(({ thin }) => thin ?? false)).toEqual([false, false]);
  });

  it("the other way on the other side is told: the thin edge lies at the fence", () => {
    const face = part("a", 200, 80, { far: 45, near: -45 });
    // the back runs on beyond the face at the near side
    const parts = ["a", "b"].map((name) => ({ ...part(name, 200, 80), ...rest(face) }));
    const { bevels } = listOf(parts, 600, 140);
    expect(bevels.map(({ thin }) => thin ?? false)).toEqual([false, true]);
    for (const { setting } of bevels) expect(setting).toBeCloseTo(80, 9);

    function rest({ profile, edges }: Part) {
      return { profile, edges, blank: { outer: rectangle(0, -18, 200, 80, "blank"), holes: [] } };
    }
  });

  it("is cut after what does not have it is crossed off, where a part would be bevelled alone otherwise", () => {
    const mixed = [part("a", 250, 80, { far: 30 }), part("b", 240, 80), part("c", 230, 80, { far: 30 })];
    const { ways, bevels, codes } = listOf(mixed, 900, 80);
    expect(ways).toEqual(["cross-cut", "bevel", "cross-cut", "cross-cut"]);
    expect(bevels[0]!.edges.map(({ part: id }) => id).toSorted()).toEqual(["set/a", "set/c"]);
    expect(codes).not.toContain("bevel-too-small");
  });

  it("takes off the hair too that the fence's step left on a blank", () => {
    const odd = ["a", "b"].map((name) => part(name, 200, 80.3, { far: 30 }));
    const { bevels, cuts } = listOf(odd, 600, 120);
    expect(bevels[0]).toMatchObject({ piece: { width: 80.5 }, across: expect.closeTo(80.3, 9) });
    expect(bevels[0]!.setting).toBeCloseTo(80.3 - 18 / Math.sqrt(3), 9);
    expect(cuts.at(-1)!.off!.width).toBeCloseTo(80.3, 9);
  });
});

describe("a strip that is crossed into parts and a piece that is cut on", () => {
  it("is bevelled along all of it where that takes only waste of the other piece", () => {
    // 900 - 160 - 3.2 leave 736.8 x 101, and of that 70 are ripped and 27.8 are waste, wider than 18 tan 45
    const small = part("a", 160, 101, { far: 45 });
    const { ways, bevels, cuts } = listOf([small, part("b", 736.5, 70)], 900, 101);
    expect(ways.toSorted()).toEqual(["bevel", "cross-cut", "cross-cut", "rip"].toSorted());
    expect(bevels[0]).toMatchObject({ number: 1, side: "upper", run: 900, across: 101 });
    expect(cuts.find(({ way }) => way === "rip")!.rest!.bevelled).toMatchObject([{ side: "upper" }]);
    expect(cuts.find(({ way }) => way === "rip")!.off!.bevelled).toBeUndefined();
  });

  it("is not where the bevel would reach into that", () => {
    const { bevels } = listOf([part("a", 160, 101, { far: 45 }), part("b", 736.5, 80)], 900, 101);
    expect(bevels.map(({ piece }) => piece !== undefined)).toEqual([false]);
  });
});

it("of what is left over of a bevelled strip the bevelled edge counts for nothing", () => {
  const [a, b] = [part("a", 200, 150, { far: 45 }), part("b", 200, 150, { far: 45 })];
  const { value, order } = nestedOn([a, b], 1000, 150);
  const { rectangles } = remainderOf(value!.sheets[0]!, order.plan.built.parts, order.process, order.shop);
  // 1000 - 2 x 203.2 long; 150 - 18 tan 45 wide
  expect(rectangles).toMatchObject([{ length: expect.closeTo(593.6, 6), width: expect.closeTo(132, 6) }]);
});

describe("a bevel of parts that can be held alone", () => {
  it("is cut along the strip where two have it, and on the part where what is kept of the strip would be spoilt", () => {
    const two = ["a", "b"].map((name) => part(name, 400, 150, { far: 30 }));
    expect(listOf(two, 900, 150).bevels.map(({ piece }) => piece !== undefined)).toEqual([true]);
    // 1200 - 2 x 403.2 leave 393.6 x 150
    expect(listOf(two, 1200, 150).bevels.map(({ piece }) => piece !== undefined)).toEqual([false, false]);
  });
});

describe("a bevel across a strip", () => {
  it("of a small part is cut on the sled, where it is clamped, and told", () => {
    const ends = ["a", "b"].map((name) => part(name, 200, 120, { left: 45 }));
    const { bevels, codes } = listOf(ends, 600, 150);
    expect(bevels).toMatchObject([
      { way: "cross-cut", trouble: "small", down: "back", setting: expect.closeTo(182, 9) },
      { way: "cross-cut", trouble: "small", fresh: false },
    ]);
    expect(codes).toContain("bevel-too-small");
  });
});
