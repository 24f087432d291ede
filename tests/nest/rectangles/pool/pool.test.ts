import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { NestStock } from "../../../../src/nest/engine.js";
import { randomFrom } from "../../../../src/nest/random.js";
import { treeOf } from "../../../../src/nest/rectangles/asTree.js";
import { itemsIn } from "../../../../src/nest/rectangles/cutTree.js";
import type { Yard } from "../../../../src/nest/rectangles/goal.js";
import { groundOf } from "../../../../src/nest/rectangles/ground.js";
import { pack } from "../../../../src/nest/rectangles/pack.js";
import { beginPool } from "../../../../src/nest/rectangles/pool/pool.js";
import type { Tile } from "../../../../src/nest/rectangles/tile.js";
import { expectFull, row, tileOf, tilesBy } from "../tiles.js";

const rule = { fit: "beside", split: "larger", rack: "open", open: "first" } as const;

function yardOf(tiles: readonly Tile[], stock: readonly NestStock[], seed: number): Yard {
  return {
    tiles: new Map(tiles.map((tile) => [tile.item, tile])),
    stock,
    kerf: 0,
    grounds: stock.map((each) => groundOf(each, 0, undefined)),
    least: Math.min(...tiles.map(({ short }) => short)),
    random: randomFrom(seed),
  };
}

/** Some sizes, each several times, standing or lying. */
const orders = fc.record({
  seed: fc.integer({ min: 1, max: 1e6 }),
  sizes: fc.integer({ min: 2, max: 12 }),
  count: fc.integer({ min: 8, max: 40 }),
  offcuts: fc.integer({ min: 0, max: 2 }),
});

describe("sheets chosen from all that were found", () => {
  it("hold every part once or leave it over, on one sheet fewer, each sheet whole", () => {
    fc.assert(
      fc.property(orders, ({ seed, sizes, count, offcuts }) => {
        const forms = tilesBy(seed, sizes);
        const tiles = Array.from({ length: count }, (_, i) => {
          const { long, short } = forms[i % sizes]!;
          return i % 3 === 0 ? tileOf(i, short, long) : tileOf(i, long, short);
        });
        const stock = [row, { name: "offcut", length: 400, width: 600, trim: 0, cost: 0, count: offcuts }];
        const yard = yardOf(tiles, stock, seed);
        const packing = pack(tiles, stock, 0, rule, yard.random);
        const pool = beginPool(yard, 0);
        pool.remember(packing);
        for (let n = 0; n < 2; n++) {
          const next = pool.withOneFewer(packing);
          const some = packing.sheets.some((sheet) => sheet.stock === 0);
          expect(next !== undefined).toBe(some);
          if (next === undefined) return;
          const laid = next.sheets.flatMap((sheet) => itemsIn(treeOf(sheet, yard.grounds[sheet.stock]!.whole)));
          const all = [...laid, ...next.left].sort((a, b) => a - b);
          expect(all).toEqual(tiles.map(({ item }) => item));
          expect(next.sheets.length).toBeLessThan(packing.sheets.length);
          const fresh = next.sheets.filter(({ stock: each }) => each === 0);
          for (const sheet of fresh) {
            expectFull(treeOf(sheet, yard.grounds[0]!.whole));
            for (const { item, turn, w, h } of sheet.laid) {
              const lie = yard.tiles.get(item)!.lies.find((each) => each.turn === turn);
              expect([w, h]).toEqual([lie?.w, lie?.h]);
            }
          }
        }
      }),
      { seed: 5, numRuns: 40 },
    );
  });

  it("find the one way in which halves and thirds fill their sheets", () => {
    // a packing that mixes them: 500 and 300 long, 600 wide; three sheets for what fills two but for a strip
    const tiles = [500, 300, 500, 300, 300].map((w, i) => tileOf(i, w, 600));
    const yard = yardOf(tiles, [row], 1);
    const packing = pack(tiles, [row], 0, rule, yard.random);
    expect(packing.sheets).toHaveLength(3);
    const pool = beginPool(yard, 0);
    pool.remember(packing);
    const next = pool.withOneFewer(packing);
    expect(next?.left).toEqual([]);
    expect(next?.sheets).toHaveLength(2);
  });
});
