import { describe, expect, it } from "vitest";
import type { NestItem, NestOrder, NestStock } from "../../../../src/nest/engine.js";
import { randomFrom } from "../../../../src/nest/random.js";
import { sheetOf } from "../../../../src/nest/rectangles/asTree.js";
import type { Yard } from "../../../../src/nest/rectangles/goal.js";
import { groundOf } from "../../../../src/nest/rectangles/ground.js";
import type { Packing } from "../../../../src/nest/rectangles/pack.js";
import { type Begun, layingByPatterns } from "../../../../src/nest/rectangles/patterns/layouts.js";
import { nestRectangles } from "../../../../src/nest/rectangles/search.js";
import { kerfOf, tilesOf } from "../../../../src/nest/rectangles/tile.js";
import type { Sawing } from "../../../../src/nest/saw/sawing.js";
import { smallCuts } from "../../../../src/nest/saw/sawnSheets.js";
import { plain } from "../../../property/nestOrders.js";

const kerf = 3.2;
const sheet: NestStock = { name: "sheet", length: 2440, width: 1220, trim: 5, cost: 1 };

/** A usual workshop with one kerf; what is shorter than 300 or narrower than 50 is not held. */
const sawing: Sawing = {
  table: { kerf, reach: 1e5, crossCut: 650, length: 2440, width: 650 },
  track: { kerf, longest: 3100 },
  hold: { length: 300, width: 50 },
  step: 0.5,
  setting: 0.01,
};

const itemsOf = (sizes: readonly (readonly [number, number, number])[]): NestItem[] =>
  sizes.flatMap(([w, h, count], kind) =>
    Array.from({ length: count }, (_, i) => ({
      id: `${kind}.${i}`,
      shape: plain(w, h),
      gap: kerf,
      turns: [0, Math.PI / 2],
    })),
  );

const orderOf = (items: readonly NestItem[], more: Partial<NestOrder> = {}): NestOrder => ({
  items,
  stock: [sheet],
  edgeToEdge: true,
  seed: 1,
  iterations: 60,
  ...more,
});

function yardOf(order: NestOrder): Yard {
  const tiles = tilesOf(order);
  return {
    tiles: new Map(tiles.map((tile) => [tile.item, tile])),
    stock: order.stock,
    kerf,
    grounds: order.stock.map((row) => groundOf(row, kerfOf(order), order.sawing)),
    least: Math.min(...tiles.map(({ short }) => short)),
    random: randomFrom(7),
  };
}

/** Every stage that layouts by patterns go through. */
function stagesOf(order: NestOrder): Begun[] {
  const stages: Begun[] = [];
  const finish = (begun: Begun): Packing => {
    stages.push(begun);
    return { sheets: begun.sheets.map(({ tree, stock }) => sheetOf(tree, stock)), left: begun.left };
  };
  layingByPatterns(tilesOf(order), yardOf(order), order.sawing, finish)?.();
  return stages;
}

const sizes = [
  [712, 330, 24],
  [564, 300, 40],
  [396, 296, 30],
  [450, 120, 36],
  [860, 402, 12],
] as const;

describe("layouts by patterns", () => {
  it("hold every part once at most, and tell which they do not hold", () => {
    const order = orderOf(itemsOf(sizes));
    const stages = stagesOf(order);
    expect(stages.length).toBeGreaterThan(4);
    for (const { sheets, left } of stages) {
      const laid = sheets.flatMap(({ tree, stock }) => sheetOf(tree, stock).laid.map(({ item }) => item));
      expect([...laid, ...left].sort((a, b) => a - b)).toEqual(order.items.map((_, i) => i));
    }
  });

  it("take no more sheets than there are, and each part in a turn that it may have", () => {
    const items = itemsOf(sizes).map((item, i) => ({ ...item, turns: i % 2 === 0 ? [0] : [Math.PI / 2] }));
    const stock = [{ ...sheet, cost: 0, count: 2 }, { ...sheet, length: 1525, width: 1525, cost: 0, count: 1 }, sheet];
    const stages = stagesOf(orderOf(items, { stock }));
    expect(stages.length).toBeGreaterThan(0);
    for (const { sheets } of stages) {
      expect(sheets.filter((one) => one.stock === 0).length).toBeLessThanOrEqual(2);
      expect(sheets.filter((one) => one.stock === 1).length).toBeLessThanOrEqual(1);
      for (const { tree, stock: row } of sheets)
        for (const { item, turn, w, h } of sheetOf(tree, row).laid) {
          expect(items[item]!.turns).toContain(turn);
          const { x, y } = items[item]!.shape.outer[2]!;
          const [length, width] = turn === 0 ? [x, y] : [y, x];
          expect([w, h]).toEqual([expect.closeTo(length + kerf, 6), expect.closeTo(width + kerf, 6)]);
        }
    }
  });

  it("have no cut of a piece too small to hold where a person saws", () => {
    const small = [...sizes, [140, 90, 60], [220, 45, 40]] as const;
    const stages = stagesOf(orderOf(itemsOf(small), { sawing }));
    expect(stages.length).toBeGreaterThan(0);
    for (const { sheets } of stages)
      for (const { tree, stock } of sheets) expect(smallCuts(sheetOf(tree, stock), sheet, sawing)).toBe(0);
  });

  it("are not made for orders in which sizes do not repeat", () => {
    const order = orderOf(itemsOf(Array.from({ length: 30 }, (_, i) => [300 + 7 * i, 200 + 3 * i, 2] as const)));
    expect(
      layingByPatterns(tilesOf(order), yardOf(order), undefined, () => ({ sheets: [], left: [] })),
    ).toBeUndefined();
  });

  it("spare a sheet that the search alone does not", () => {
    const many = itemsOf([
      [973, 421, 29],
      [812, 388, 41],
      [655, 402, 33],
      [1041, 612, 22],
      [571, 447, 38],
    ]);
    const before = nestRectangles(orderOf(many, { iterations: 33 })).sheets.length;
    const after = nestRectangles(orderOf(many, { iterations: 34 })).sheets.length;
    expect(after).toBeLessThan(before);
  });
});
