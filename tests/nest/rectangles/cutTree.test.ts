import { describe, expect, it } from "vitest";
import { randomFrom } from "../../../src/nest/random.js";
import { sheetOf, treeOf } from "../../../src/nest/rectangles/asTree.js";
import { copyOf, eachFree, emptySheet, itemsIn, type Piece, takeOut } from "../../../src/nest/rectangles/cutTree.js";
import { insert, type Spot } from "../../../src/nest/rectangles/insert.js";
import { pack } from "../../../src/nest/rectangles/pack.js";
import { boxesOf, expectFull, ground, row, tileOf, tilesBy } from "./tiles.js";

const spotsOf = (tree: Piece): Spot[] => {
  const spots: Spot[] = [];
  eachFree(tree, 0, 0, (piece, free) => spots.push({ piece, free, ground }));
  return spots;
};

describe("a sheet as a tree of cuts", () => {
  it("stays full of blanks and of what is free, whatever is put in and taken out", () => {
    for (let seed = 1; seed <= 8; seed++) {
      const random = randomFrom(seed);
      const tiles = tilesBy(seed, 16);
      let tree = emptySheet(1000, 600);
      for (let n = 0; n < 12; n++) {
        tree = copyOf(tree);
        takeOut(tree, () => random() < 0.4);
        const inside = new Set(itemsIn(tree));
        const spots = spotsOf(tree);
        const taste = { power: 1.5, least: 0, blinks: 0.1 } as const;
        for (const tile of tiles)
          if (!inside.has(tile.item) && insert(tile, spots, taste, random)) inside.add(tile.item);
        expect(itemsIn(tree).sort((a, b) => a - b)).toEqual([...inside].sort((a, b) => a - b));
        expectFull(tree);
      }
    }
  });

  it("is one free piece again when all is taken out", () => {
    const tree = emptySheet(1000, 600);
    const spots = spotsOf(tree);
    for (const tile of tilesBy(3, 9)) insert(tile, spots, { power: 1, least: 0, blinks: 0 }, randomFrom(1));
    expect(itemsIn(tree).length).toBeGreaterThan(4);
    expect(takeOut(tree, () => true)).toBe(true);
    expect(boxesOf(tree)).toEqual([{ x: 0, y: 0, w: 1000, h: 600 }]);
  });

  it("holds what a packed sheet holds, each tile where it was", () => {
    for (let seed = 1; seed <= 8; seed++)
      for (const split of ["larger", "along", "across", "late"] as const) {
        const rule = { fit: "area", split, rack: "in turn", open: "first" } as const;
        for (const sheet of pack(tilesBy(seed, 24), [row], 0, rule, randomFrom(seed)).sheets) {
          const tree = treeOf(sheet, ground.whole);
          const places = (of: typeof sheet) =>
            of.laid
              .map(({ item, x, y, turn }) => [item, Math.round(x * 1e6), Math.round(y * 1e6), turn])
              .sort(([a], [b]) => a! - b!);
          expect(places(sheetOf(tree, 0))).toEqual(places(sheet));
          expectFull(tree);
        }
      }
  });

  it("leaves no cut where a tile is as wide as what is free", () => {
    const tree = emptySheet(1000, 600);
    const spots = spotsOf(tree);
    const taste = { power: 1, least: 0, blinks: 0 } as const;
    // three strips of the sheet's width, turned where they have to be
    for (const [i, w] of [300, 500, 200].entries()) insert(tileOf(i, w, 600), spots, taste, randomFrom(1));
    expect(itemsIn(tree)).toHaveLength(3);
    expect(spots).toHaveLength(0);
    expect(tree.strips.every(({ item }) => item !== undefined)).toBe(true);
  });
});
