import { describe, expect, it } from "vitest";
import { areaOfRegion } from "../../src/geometry/measure.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import type { NestedSheet } from "../../src/model/build.js";
import type { Rectangle } from "../../src/nest/clearRectangle.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { yieldOf } from "../../src/nest/yield.js";
import { sampleShop } from "../fixtures/jobAndShop.js";
import { blankPart, orderOf, plain, ring } from "../property/nestOrders.js";
import { slanted, triangle } from "./shapes/orders.js";

const parts = [
  blankPart("a", "one", plain(300, 200)),
  blankPart("b", "one", ring(100, 50)),
  blankPart("c", "one", ring(420, 300)),
  blankPart("d", "one", triangle(490, 490)),
];
const { process } = orderOf(parts, {}, () => ({ gap: 10 }));
const lies = (i: number, x: number, y: number) => ({ part: parts[i]!.id, x, y, turn: 0, backUp: false });
const sheet = (placed: NestedSheet["placed"], more: Partial<NestedSheet> = {}): NestedSheet => ({
  sheet: "one 1",
  board: parts[0]!.board,
  length: 1000,
  width: 500,
  trim: 5,
  placed,
  ...more,
});
const shop = { saw: { ...sampleShop.saw, kerf: 3.2 }, "least offcut": { length: 300, width: 100 } };
const left = (placed: NestedSheet["placed"], more: Partial<NestedSheet> = {}) =>
  remainderOf(sheet(placed, more), parts, process, shop);
/** Without noise. */
const plainly = (rectangles: readonly Rectangle[]) =>
  rectangles.map(({ x, y, length, width }) => [x, y, length, width].map((value) => Math.round(value * 1e6) / 1e6));
const areas = (of: ReturnType<typeof left>) => of.regions.map(areaOfRegion);

describe("what a sheet leaves", () => {
  it("is all of it within the trim where nothing lies on it", () => {
    const all = left([]);
    expect(plainly(all.rectangles)).toEqual([[5, 5, 990, 490]]);
    expect(areas(all)[0]).toBeCloseTo(990 * 490, 6);
  });

  it("is what lies beside the parts and their gaps, as one piece and as rectangles a kerf apart", () => {
    // right of a, from 5 + 300 + 10 to 995 the whole width; above a what is left of its height
    const beside = left([lies(0, 5, 5)]);
    expect(plainly(beside.rectangles)).toEqual([
      [315, 5, 680, 490],
      [5, 215, 315 - 3.2 - 5, 280],
    ]);
    // the corner beside a is round about its own corner: a quarter disc of the gap less than the square
    expect(areas(beside)[0]).toBeCloseTo(990 * 490 - 310 * 210 + (100 - (Math.PI * 100) / 4), 3);
  });

  it("goes by true shapes: what lies in a ring's opening and beside a slant is not lost", () => {
    // from the opening's 300 a gap all round is lost: 280, and a square of 280 / sqrt(2) in it is too short to keep
    expect(left([lies(2, 5, 40)]).rectangles[0]).toMatchObject({ x: 435, y: 5, width: 490 });
    const inOpening = remainderOf(sheet([lies(2, 5, 40)]), parts, process, {
      ...shop,
      "least offcut": { length: 190, width: 190 },
    });
    const square = inOpening.rectangles.find(({ x }) => x > 70 && x < 140);
    expect(square!.length * square!.width).toBeGreaterThan(0.999 * (280 ** 2 / 2));
    // beside the slant of a triangle: moved on by the gap, the largest rectangle within what is left of that corner
    const corner = remainderOf(sheet([lies(3, 5, 5)], { length: 500 }), parts, process, {
      ...shop,
      "least offcut": { length: 200, width: 200 },
    });
    const leg = 490 - 10 * Math.SQRT2;
    expect(corner.rectangles).toHaveLength(1);
    expect(corner.rectangles[0]!.length * corner.rectangles[0]!.width).toBeCloseTo((leg / 2) ** 2, 0);
  });

  it("has a hole where a part was cut out of its middle", () => {
    const { regions, rectangles } = left([lies(1, 450, 200)]);
    expect(regions).toHaveLength(1);
    expect(regions[0]!.holes).toHaveLength(1);
    expect(areas({ regions, rectangles })[0]).toBeCloseTo(990 * 490 - Math.PI * 60 ** 2, 3);
    expect(plainly(rectangles.slice(0, 2)).map(([, , length, width]) => [length, width])).toEqual([
      [435, 490],
      [435, 490],
    ]);
  });

  it("ends at zones and at an odd offcut's outline", () => {
    const outline = slanted(1000, 500, 300);
    const zones = [rectangle(0, 0, 200, 500, "clamp"), circle({ x: 600, y: 250 }, 20, "knot")];
    const odd = left([], { outline, zones });
    expect(areas(odd)[0]).toBeLessThan(800 * 495 - 300 ** 2 / 2);
    for (const { x, y, length, width } of odd.rectangles) {
      expect(x).toBeGreaterThanOrEqual(200 - 1e-6);
      expect(x + length + y + width).toBeLessThanOrEqual(1000 + 200 - 5 * Math.SQRT2 + 1e-6);
    }
  });

  it("is nothing on a sheet that is full, and no slivers", () => {
    const full = [blankPart("f", "one", plain(990, 490)), blankPart("g", "one", plain(880, 490))];
    const rest = (i: number) =>
      remainderOf(
        sheet([{ part: full[i]!.id, x: 5, y: 5, turn: 0, backUp: false }]),
        full,
        orderOf(full, {}, () => ({ gap: 10 })).process,
        shop,
      );
    expect(rest(0)).toEqual({ regions: [], rectangles: [] });
    // 990 - 880 - 10 are 100: just wide enough
    expect(plainly(rest(1).rectangles)).toEqual([[895, 5, 100, 490]]);
    expect(
      remainderOf(
        sheet([{ part: full[1]!.id, x: 5, y: 5, turn: 0, backUp: false }]),
        full,
        orderOf(full, {}, () => ({ gap: 10.1 })).process,
        shop,
      ).regions,
    ).toEqual([]);
  });

  it("of a sawn sheet is what its cuts leave", () => {
    const cut = { saw: "table", way: "rip", along: true, size: 200, kerf: 3.2 } as const;
    const off = { x: 0, y: 0, length: 1000, width: 200, part: parts[0]!.id };
    const rest = { x: 0, y: 203.2, length: 1000, width: 296.8 };
    const sawn = { x: 0, y: 0, length: 1000, width: 500, cut: { ...cut, off, rest } };
    const { rectangles } = left([lies(0, 0, 0)], { sawn });
    expect(rectangles).toHaveLength(1);
    expect(rectangles[0]!.y).toBeCloseTo(203.2, 9);
    // the trim of 5 is taken off it at the top and at both ends
    expect(rectangles[0]!.width).toBeCloseTo(291.8, 9);
    expect(rectangles[0]!.length).toBeCloseTo(990, 9);
  });
});

it("counts as yield what becomes parts, the ring's opening left out", () => {
  const whole = yieldOf({ sheets: [sheet([lies(0, 5, 5), lies(1, 600, 50)])] }, parts);
  expect(whole.parts).toBeCloseTo(300 * 200 + Math.PI * (50 ** 2 - 25 ** 2), 6);
  expect(whole.sheets).toBe(500_000);
  expect(whole.share).toBeCloseTo(whole.parts / 500_000, 12);
  expect(yieldOf({ sheets: [] }, parts).share).toBe(0);
});
