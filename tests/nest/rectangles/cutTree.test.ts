import { describe, expect, it } from "vitest";
import { randomFrom } from "../../../src/nest/random.js";
import { sheetOf, treeOf } from "../../../src/nest/rectangles/asTree.js";
import { copyOf, eachFree, emptySheet, itemsIn, type Piece, takeOut } from "../../../src/nest/rectangles/cutTree.js";
import { groundOf } from "../../../src/nest/rectangles/ground.js";
import { insert, type Spot } from "../../../src/nest/rectangles/insert.js";
import { pack } from "../../../src/nest/rectangles/pack.js";
import type { Rest } from "../../../src/nest/rectangles/rest.js";
import type { Tile } from "../../../src/nest/rectangles/tile.js";

const row = { name: "sheet", length: 1000, width: 600, trim: 0, cost: 1 };
const ground = groundOf(row, 0, undefined);

const tileOf = (item: number, w: number, h: number): Tile => {
  const upright = { turn: 0, w, h, least: { w, h }, openings: [] };
  const turned = { turn: Math.PI / 2, w: h, h: w, least: { w: h, h: w }, openings: [] };
  return { item, lies: [upright, turned], pad: 0, long: Math.max(w, h), short: Math.min(w, h) };
};

const tilesBy = (seed: number, count: number): Tile[] => {
  const random = randomFrom(seed);
  return Array.from({ length: count }, (_, i) => tileOf(i, 40 + random() * 300, 40 + random() * 200));
};

/** What lies in a tree, and what is free in it, one beside another. */
function boxesOf(tree: Piece): readonly Rest[] {
  const { laid, rests } = sheetOf(tree, 0);
  return [...laid.map(({ x, y, w, h }) => ({ x, y, w, h })), ...rests];
}

const areaOf = (boxes: readonly Rest[]) => boxes.reduce((sum, { w, h }) => sum + w * h, 0);

function expectFull(tree: Piece): void {
  const boxes = boxesOf(tree);
  expect(areaOf(boxes)).toBeCloseTo(600_000, 3);
  const overlaps = boxes.flatMap((a, i) =>
    boxes.slice(i + 1).map((b) => {
      const across = Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x);
      const up = Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y);
      return Math.min(across, up);
    }),
  );
  expect(Math.max(-1, ...overlaps)).toBeLessThan(1e-5);
}

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
