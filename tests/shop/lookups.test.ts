import { describe, expect, it } from "vitest";
import { boltRow, cutOf, insertHoleDepth, insertsFor, screwRow, smallestBit } from "../../src/shop/lookups.js";
import { screwName, splitScrew } from "../../src/shop/screwName.js";
import { starterShop } from "../../src/shop/starter.js";

const shop = starterShop();

describe("look-ups in the shop", () => {
  it("find bolts by name and nothing by what every object has", () => {
    expect(boltRow(shop, "M6 button black")?.head).toMatchObject({ d: 10.5, form: "button" });
    expect(boltRow(shop, "1/4-20 button")?.d).toBe(6.35);
    expect(boltRow(shop, "constructor")).toBeUndefined();
  });

  it("find a screw by its diameter, however that is written", () => {
    expect(screwRow(shop, "4.0")).toBe(shop.screws["4.0"]);
    expect(screwRow(shop, "4")).toBe(shop.screws["4.0"]);
    expect(screwRow(shop, "#8")).toBe(shop.screws["#8"]);
    expect(screwRow(shop, "#9")).toBeUndefined();
  });

  it("list the inserts of a thread, shortest first, with the depth of their holes", () => {
    const inserts = insertsFor(shop, "M6");
    expect(inserts.map(({ name }) => name)).toEqual(["M6 x 12", "M6 x 15"]);
    expect(inserts.map(({ insert }) => insertHoleDepth(insert))).toEqual([13, 16]);
    expect(insertsFor(shop, "M7")).toEqual([]);
  });

  it("find the thinnest bit by what it measures, not by its label", () => {
    expect(smallestBit(shop, ["straight"])?.name).toBe("3 straight");
    const worn = { ...shop, bits: { ...shop.bits, old: { kind: "straight", d: 3.175, measured: 2.9 } as const } };
    expect(smallestBit(worn, ["straight"])?.name).toBe("old");
    expect(cutOf(worn.bits.old)).toBe(2.9);
    expect(smallestBit({ ...shop, bits: {} }, ["straight"])).toBeUndefined();
  });
});

describe("splitScrew", () => {
  it.each([
    ["4.0 x 25", "4.0", 25],
    ["4.0x25mm", "4.0", 25],
    ["5.0 × 60", "5.0", 60],
    ["#8 x 1 1/4", "#8", 31.75],
    ['#8 x 1 1/4"', "#8", 31.75],
    ["#8 x 32mm", "#8", 32],
  ])("takes %j apart", (text, row, length) => {
    expect(splitScrew(text)).toEqual({ row, length });
  });

  it.each(["4.0", "x 25", "4.0 x", "4.0 x long", "4.0 x 0"])("finds no screw in %j", (text) => {
    expect(splitScrew(text)).toBeUndefined();
  });

  it("is undone by screwName", () => {
    expect(screwName("4.0", 25)).toBe("4.0 x 25");
    expect(screwName("#8", 31.75)).toBe('#8 x 1 1/4"');
    for (const [row, { lengths }] of Object.entries(shop.screws)) {
      for (const length of lengths) {
        const split = splitScrew(screwName(row, length));
        expect(split?.row).toBe(row);
        expect(split?.length).toBeCloseTo(length, 9);
      }
    }
  });
});
