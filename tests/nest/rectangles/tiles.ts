import { expect } from "vitest";
import { randomFrom } from "../../../src/nest/random.js";
import { sheetOf } from "../../../src/nest/rectangles/asTree.js";
import type { Piece } from "../../../src/nest/rectangles/cutTree.js";
import { groundOf } from "../../../src/nest/rectangles/ground.js";
import type { Rest } from "../../../src/nest/rectangles/rest.js";
import type { Tile } from "../../../src/nest/rectangles/tile.js";

export const row = { name: "sheet", length: 1000, width: 600, trim: 0, cost: 1 };
export const ground = groundOf(row, 0, undefined);

export const tileOf = (item: number, w: number, h: number): Tile => {
  const upright = { turn: 0, w, h, least: { w, h }, openings: [] };
  const turned = { turn: Math.PI / 2, w: h, h: w, least: { w: h, h: w }, openings: [] };
  return { item, lies: [upright, turned], pad: 0, long: Math.max(w, h), short: Math.min(w, h) };
};

/** Tiles of many sizes, by a seed. */
export const tilesBy = (seed: number, count: number): Tile[] => {
  const random = randomFrom(seed);
  return Array.from({ length: count }, (_, i) => tileOf(i, 40 + random() * 300, 40 + random() * 200));
};

/** What lies in a tree, and what is free in it, one beside another. */
export function boxesOf(tree: Piece): readonly Rest[] {
  const { laid, rests } = sheetOf(tree, 0);
  return [...laid.map(({ x, y, w, h }) => ({ x, y, w, h })), ...rests];
}

const areaOf = (boxes: readonly Rest[]) => boxes.reduce((sum, { w, h }) => sum + w * h, 0);

/** Blanks and what is free make up the whole sheet, and none lies on another. */
export function expectFull(tree: Piece): void {
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
