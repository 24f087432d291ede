import { describe, expect, it } from "vitest";
import { sheetOf } from "../../../../src/nest/rectangles/asTree.js";
import { itemsIn } from "../../../../src/nest/rectangles/cutTree.js";
import { cutBy } from "../../../../src/nest/rectangles/patterns/cutBy.js";
import type { Filling } from "../../../../src/nest/rectangles/patterns/filling.js";

const a: Filling = { kind: 0, lie: 0 };
const b: Filling = { kind: 1, lie: 0 };
const beside = (one: Filling, other: Filling): Filling => ({ across: true, one, other });
const above = (one: Filling, other: Filling): Filling => ({ across: false, one, other });

/** Blanks of 40 x 30 and 20 x 50, so many of each. */
function blanks(...counts: number[]) {
  const sizes = [
    { w: 40, h: 30 },
    { w: 20, h: 50 },
  ];
  let item = 0;
  return (kind: number) => {
    if (counts[kind]! === 0) return undefined;
    counts[kind]!--;
    return { ...sizes[kind]!, item: item++, turn: 0 };
  };
}

describe("a sheet cut by a filling", () => {
  it("has cut after cut the same way as one row, and what is free at the end and beside all", () => {
    const tree = cutBy(beside(beside(a, b), a), { w: 110, h: 60 }, blanks(2, 1))!;
    const { laid, rests } = sheetOf(tree, 0);
    expect(laid.map(({ x, y, w, h }) => [x, y, w, h])).toEqual([
      [0, 0, 40, 30],
      [40, 0, 20, 50],
      [60, 0, 40, 30],
    ]);
    expect(rests.map(({ x, y, w, h }) => [x, y, w, h])).toEqual([
      [0, 30, 40, 20],
      [60, 30, 40, 20],
      [100, 0, 10, 50],
      [0, 50, 110, 10],
    ]);
  });

  it("leaves free what there are no blanks for any more", () => {
    const tree = cutBy(above(beside(a, a), beside(a, a)), { w: 80, h: 60 }, blanks(3, 0))!;
    expect(itemsIn(tree)).toEqual([0, 1, 2]);
    const { rests } = sheetOf(tree, 0);
    expect(rests.map(({ x, y, w, h }) => [x, y, w, h])).toEqual([[40, 30, 40, 30]]);
    expect(cutBy(beside(a, b), { w: 80, h: 60 }, blanks(0, 0))).toBeUndefined();
  });

  it("is a sheet with a blank on it even where that takes all of it", () => {
    const tree = cutBy(a, { w: 40, h: 30 }, blanks(1, 0))!;
    expect(tree.item).toBeUndefined();
    expect(itemsIn(tree)).toEqual([0]);
  });
});
