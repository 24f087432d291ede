import { describe, expect, it } from "vitest";
import { areaOf } from "../../../src/geometry/measure.js";
import { offsetProfile } from "../../../src/geometry/offset.js";
import { circle, rectangle } from "../../../src/geometry/shapes.js";
import { featureId } from "../../../src/model/ids.js";
import type { Bit, Bush, Shop } from "../../../src/model/shop.js";
import { feature, id, opening, panel, processFor, rounded } from "../benchParts.js";

const bit = (d: number, more: Partial<Bit> = {}): Bit => ({ kind: "straight", d, "cutting length": 40, ...more });
const bush = (d: number, bore: number): Bush => ({ d, bore, stands: 8 });
const drawer: Partial<Shop> = {
  bits: { "12 straight": bit(12) },
  bushes: { "20 bush": bush(20, 17), "27 bush": bush(27, 24) },
  router: { step: 0.5 },
};
const hand = (part: ReturnType<typeof panel>, shop: Partial<Shop> = drawer) => processFor(part, "hand", shop).hand;
const lineOf = (name: string, part: ReturnType<typeof panel>, shop: Partial<Shop> = drawer) =>
  hand(part, shop).profiles.find((each) => each.feature === featureId(id, name))!;

const soft = rounded(0, 0, 400, 300, 40, "edge");
const board = (features: Parameters<typeof panel>[0] = [], outer = soft) =>
  panel(features, {
    profile: {
      outer,
      holes: features.flatMap(({ cut }) => (cut.kind === "opening" ? [cut.region.outer] : [])),
    },
  });
const window = feature("window", opening(rounded(100, 100, 120, 80, 20, "window")));

describe("a template", () => {
  it("is smaller than the part by twice the offset, and its corners by once", () => {
    const [best, other] = lineOf("outline", board()).templates;
    expect(best).toMatchObject({ bush: "20 bush", bit: "12 straight", offset: 4, size: [392, 292], rounded: 0 });
    expect(other).toMatchObject({ bush: "27 bush", offset: 7.5, size: [385, 285] });
    // a rectangle with corners of R36: what is left of R40 less 4
    expect(areaOf(best!.outline!)).toBeCloseTo(392 * 292 - (4 - Math.PI) * 36 ** 2, 6);
  });

  it("is larger than an opening, and its inside corners take the bush where the opening's take the bit", () => {
    const [best] = lineOf("window", board([window])).templates;
    expect(best).toMatchObject({ offset: 4, size: [128, 88] });
    expect(best!.corner).toBeCloseTo(24, 9);
    const tight = feature("window", opening(rounded(100, 100, 120, 80, 6, "window")));
    expect(lineOf("window", board([tight])).templates[0]!.corner).toBeCloseTo(20 / 2, 9);
  });

  it("leads the cutter back to the line: moved out by the bush and in by the bit it is the part again", () => {
    const { templates, size } = lineOf("outline", board());
    const [outline] = offsetProfile(templates[0]!.outline!, templates[0]!.offset);
    expect(size).toEqual([400, 300]);
    expect(areaOf(outline!)).toBeCloseTo(areaOf(soft), 4);
  });

  it("goes by the diameter that was measured, not the one on the bit", () => {
    const worn = { ...drawer, bits: { "12 straight": bit(12, { measured: 11.8 }) } };
    expect(lineOf("outline", board(), worn).templates[0]!.offset).toBeCloseTo(4.1, 12);
  });

  it("says how many outside corners the bush rounds over", () => {
    const sharp = rectangle(0, 0, 400, 300, ["a", "b", "c", "d"]);
    expect(lineOf("outline", board([], sharp)).templates.map(({ rounded: count }) => count)).toEqual([4, 4]);
    // R40 is wider than either offset, R6 wider than the smaller one alone
    const little = rounded(0, 0, 400, 300, 6, "edge");
    expect(lineOf("outline", board([], little)).templates.map(({ rounded: count }) => count)).toEqual([0, 4]);
  });

  it("is not there where a neck closes or where nothing is left of it", () => {
    // two fields of 100 with a neck of 10 between them: it closes for an offset of 7.5, not for 4
    const at = (x: number, y: number) => ({ x, y, bulge: 0, by: "edge" });
    const neck = [
      [0, 0],
      [100, 0],
      [100, 45],
      [200, 45],
      [200, 0],
      [300, 0],
      [300, 100],
      [200, 100],
      [200, 55],
      [100, 55],
      [100, 100],
      [0, 100],
    ].map(([x, y]) => at(x!, y!));
    const small = {
      ...drawer,
      bits: { "5 straight": bit(5) },
      bushes: { "13 bush": bush(13, 10), "20 bush": bush(20, 17) },
    };
    const sizes = lineOf("outline", board([], neck), small).templates.map(({ offset, size }) => [offset, size]);
    expect(sizes).toEqual([
      [4, [292, 92]],
      [7.5, undefined],
    ]);
  });

  it("needs a bit that turns free in the bush, shank and all, and reaches through the board", () => {
    const shanked = { ...drawer, bits: { "12 straight": bit(12, { shank: 17 }) } };
    expect(lineOf("outline", board(), shanked).templates.map(({ bush: name }) => name)).toEqual(["27 bush"]);
    expect(lineOf("outline", board(), { ...drawer, bits: { "12 straight": bit(16.1) } }).templates).toHaveLength(1);
    const none = lineOf("outline", board(), { ...drawer, bits: { "12 straight": bit(12, { "cutting length": 18 }) } });
    expect([none.templates, none.passes]).toEqual([[], []]);
  });

  it("is as large as the part for a bit that runs on its own bearing, over which sharp corners stay sharp", () => {
    const bearing: Bit = { kind: "flush trim", d: 12, bearing: 12, "cutting length": 25 };
    const sharp = rectangle(0, 0, 400, 300, ["a", "b", "c", "d"]);
    const line = lineOf("outline", board([], sharp), {
      ...drawer,
      bits: { "12 flush": bearing, "12 straight": bit(12) },
    });
    expect(line.templates[0]).toMatchObject({ bit: "12 flush", offset: 0, size: [400, 300], rounded: 0 });
    expect(line.templates[0]!.bush).toBeUndefined();
    const thin = { ...bearing, bearing: 11 };
    expect(lineOf("outline", board([], sharp), { ...drawer, bits: { thin } }).templates).toEqual([]);
  });
});

describe("passes by hand", () => {
  it("are at most 6 mm and half a bit deep, as equal as the step allows, the last through the board", () => {
    expect(lineOf("outline", board()).passes).toEqual([5, 10, 15, 18.3]);
    const thin = { ...drawer, bits: { "6 straight": bit(6) } };
    const depths = lineOf("outline", board(), thin).passes;
    const each = depths.map((depth, i) => depth - (depths[i - 1] ?? 0));
    expect(Math.max(...each)).toBeLessThanOrEqual(3 + 1e-9);
    expect(depths.at(-1)).toBeCloseTo(18.3, 9);
  });

  it("feed against the bit's turn: counter-clockwise round the outside, clockwise inside (common practice, no source)", () => {
    expect(lineOf("outline", board()).feed).toBe("counter-clockwise");
    expect(lineOf("window", board([window])).feed).toBe("clockwise");
  });
});

describe("a circle jig", () => {
  const about = { x: 0, y: 0 };
  const ring = panel(
    [
      feature("inside", opening(circle(about, 100, "inside"))),
      feature("recess", {
        kind: "pocket",
        region: { outer: circle(about, 120, "recess"), holes: [] },
        depth: 6,
        corner: "bit",
      }),
    ],
    { profile: { outer: circle(about, 150, "edge"), holes: [circle(about, 100, "inside")] } },
  );

  it("cuts recess, outside and inside in this order about one pivot, set to the middle of the bit", () => {
    const [jig, ...more] = hand(ring).jigs;
    expect(more).toEqual([]);
    expect(jig).toMatchObject({ pivot: about, bit: "12 straight", pivotStays: false });
    // R - d/2 along the recess's wall, R + d/2 outside, R - d/2 inside
    expect(jig!.cuts.map(({ side, pivots }) => [side, pivots.at(-1)])).toEqual([
      ["recess", 114],
      ["outside", 156],
      ["inside", 94],
    ]);
  });

  it("leaves nothing standing between the rings that clear the recess", () => {
    const { pivots } = hand(ring).jigs[0]!.cuts[0]!;
    // from inside the opening's line to the wall, each ring over the one before it
    expect(pivots[0]! - 6).toBeLessThan(100);
    expect(pivots.at(-1)! + 6).toBe(120);
    for (const [i, pivot] of pivots.slice(1).entries()) expect(pivot - pivots[i]!).toBeLessThan(12);
  });

  it("says where its pivot stays in the part, and is not for small circles", () => {
    const disc = panel([], { profile: { outer: circle(about, 150, "edge"), holes: [] } });
    expect(hand(disc).jigs[0]!.pivotStays).toBe(true);
    const small = panel([], { profile: { outer: circle(about, 39.9, "edge"), holes: [] } });
    expect(hand(small).jigs).toEqual([]);
  });
});

it("gives hand work to what the machine leaves on the side that lies down, and nothing to what it cuts", () => {
  const recess = (side: "face" | "back", x: number) =>
    feature(
      side,
      { kind: "pocket", region: { outer: rounded(x, 50, 80, 60, 10, side), holes: [] }, depth: 6, corner: "bit" },
      { side },
    );
  const both = panel([recess("face", 50), recess("back", 200)]);
  const made = processFor(both, "cnc", { bits: { ...drawer.bits, "8 straight": bit(8) } });
  expect(made.hand.profiles.map(({ feature: name, side }) => [name, side])).toEqual([
    [featureId(id, "back"), "recess"],
  ]);
});
