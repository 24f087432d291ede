import { expect, it } from "vitest";
import type { NestedSheet } from "../../src/model/build.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { yieldOf } from "../../src/nest/yield.js";
import { blankPart, orderOf, plain, ring } from "../property/nestOrders.js";

const parts = [blankPart("a", "one", plain(300, 200)), blankPart("b", "one", ring(100, 50))];
const { process } = orderOf(parts, {}, () => ({ gap: 10 }));
const lies = (i: number, x: number, y: number) => ({ part: parts[i]!.id, x, y, turn: 0, backUp: false });
const sheet = (placed: NestedSheet["placed"]): NestedSheet => ({
  sheet: "one 1",
  board: parts[0]!.board,
  length: 1000,
  width: 500,
  trim: 5,
  placed,
});

it("finds the largest rectangle beside the parts, their gap and the trim left out", () => {
  expect(remainderOf(sheet([]), parts, process)).toEqual({ x: 5, y: 5, length: 990, width: 490 });
  // right of a: from 5 + 300 + 10 to 995, the whole usable width
  expect(remainderOf(sheet([lies(0, 5, 5)]), parts, process)).toEqual({ x: 315, y: 5, length: 680, width: 490 });
  // b blocks the right: above both, from 215 to 495, is larger than between them
  expect(remainderOf(sheet([lies(0, 5, 5), lies(1, 600, 50)]), parts, process)).toEqual({
    x: 5,
    y: 215,
    length: 990,
    width: 280,
  });
});

it("finds none on a sheet that is full", () => {
  const full = [blankPart("f", "one", plain(990, 490))];
  const lie = { part: full[0]!.id, x: 5, y: 5, turn: 0, backUp: false };
  expect(remainderOf(sheet([lie]), full, orderOf(full, {}, () => ({})).process)).toBeUndefined();
});

it("counts as yield what becomes parts, the ring's opening left out", () => {
  const whole = yieldOf({ sheets: [sheet([lies(0, 5, 5), lies(1, 600, 50)])] }, parts);
  expect(whole.parts).toBeCloseTo(300 * 200 + Math.PI * (50 ** 2 - 25 ** 2), 6);
  expect(whole.sheets).toBe(500_000);
  expect(whole.share).toBeCloseTo(whole.parts / 500_000, 12);
  expect(yieldOf({ sheets: [] }, parts).share).toBe(0);
});
