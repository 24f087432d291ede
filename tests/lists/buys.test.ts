import { describe, expect, it } from "vitest";
import { buysOf } from "../../src/lists/buys.js";
import { clothsOf, rollLength } from "../../src/lists/cloth.js";
import { priceOf } from "../../src/lists/price.js";
import { sampleBuild, samplePart } from "../fixtures/build.js";

const build = sampleBuild();
const buys = buysOf(build);
const buy = (start: string) => buys.find(({ item }) => item.startsWith(start))!;

describe("the shopping list", () => {
  it("counts sheets to buy by kind, and neither offcuts nor what is in the rack", () => {
    expect(buys.filter(({ kind }) => kind === "sheet")).toEqual([
      {
        kind: "sheet",
        item: "MDF, mdf-18, sheet 2440 x 1220",
        count: 1,
        price: 38.5,
        cost: 38.5,
        note: "for board box",
      },
    ]);
    const [first, ...rest] = build.layout.sheets;
    const sheets = [
      first!,
      { ...first!, sheet: "box 2" },
      { ...first!, sheet: "box 3", onHand: true as const },
      ...rest,
    ];
    const more = buysOf({ ...build, layout: { ...build.layout, sheets } });
    expect(more[0]).toMatchObject({ count: 2, cost: 77 });
  });

  it("adds up what several pieces ask for", () => {
    const { built } = build.plan;
    const asked = [
      ...built.buys,
      { item: "screw 4.0 x 50", count: 6 },
      { item: "screw 4.0 x 50", count: 1, unit: "box" },
    ];
    const more = buysOf({ ...build, plan: { ...build.plan, built: { ...built, buys: asked } } });
    const screws = more.filter(({ item }) => item === "screw 4.0 x 50");
    expect(screws.map(({ count, unit }) => [count, unit])).toEqual([
      [10, undefined],
      [1, "box"],
    ]);
  });

  it("takes carpet for the plate with its thickness and wrap all round, the longer way across the roll", () => {
    // 1027 + 2 x (12 + 40) = 1131 across a roll of 1370, 847 + 104 = 951 along it
    expect(clothsOf(samplePart("P1"))).toEqual([{ covering: "carpet", length: 1131, width: 951 }]);
    expect(buy("box-carpet")).toMatchObject({ count: 1, unit: "m", price: 9.5, cost: 9.5 });
  });

  it("takes adhesive for the joints and twice the covered area, rounded up", () => {
    // four walls, two joints each: 4 x 420 + 4 x 383.6 = 3.21 m, one tube of 10.4 m
    expect(buy("adhesive for joints")).toMatchObject({ count: 1, note: "3.2 m of joint at a 6 mm bead" });
    // 1.131 x 0.951 = 1.0756 m2; two surfaces at 2.5 m2 a litre = 0.86 L
    expect(buy("contact adhesive")).toMatchObject({ count: 0.9, unit: "L" });
  });

  it("says what has no price and sums what has", () => {
    const price = priceOf(buys, "EUR");
    expect(price).toMatchObject({ currency: "EUR", total: 48 });
    expect(price.unpriced).toHaveLength(7);
    expect(price.unpriced).toContain("terminal 78 x 54");
    // sums in cents: 0.1 + 0.2 is 0.3
    const cents = [0.1, 0.2].map((cost) => ({ kind: "fitting", item: "x", count: 1, cost, note: "" }) as const);
    expect(priceOf(cents, undefined).total).toBe(0.3);
  });
});

describe("cloth on a roll", () => {
  const cloth = (length: number, width: number) => ({ covering: "carpet", length, width });

  it("lies side by side where the roll is wide enough", () => {
    expect(rollLength([cloth(600, 400), cloth(700, 500)], 1370)).toEqual({ length: 500, seams: 0 });
    expect(rollLength([cloth(600, 400), cloth(800, 500)], 1370)).toEqual({ length: 900, seams: 0 });
  });

  it("lies along the roll where its longer side is wider, and gets a seam where both are", () => {
    expect(rollLength([cloth(2000, 900)], 1370)).toEqual({ length: 2000, seams: 0 });
    expect(rollLength([cloth(2000, 1500)], 1370)).toEqual({ length: 4000, seams: 1 });
  });

  it("of nothing takes nothing", () => {
    expect(rollLength([], 1370)).toEqual({ length: 0, seams: 0 });
  });
});
