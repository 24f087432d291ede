import { describe, expect, it } from "vitest";
import { difference, intersection, union } from "../../src/geometry/boolean.js";
import { areaOfRegion } from "../../src/geometry/measure.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";

const solid = (outer: Profile, ...holes: Profile[]): Region => ({ outer, holes });
const box = (x0: number, y0: number, x1: number, y1: number, by: string) => solid(rectangle(x0, y0, x1, y1, by));
const disc = (x: number, y: number, r: number, by: string) => solid(circle({ x, y }, r, by));
const areas = (regions: readonly Region[]) => regions.map(areaOfRegion);

describe("flush and touching shapes", () => {
  it("grow together along a common edge, and the names of what is left stay", () => {
    const [joined, ...more] = union([box(0, 0, 10, 10, "a"), box(10, 0, 20, 10, "b")]);
    expect(more).toEqual([]);
    expect(areaOfRegion(joined!)).toBeCloseTo(200, 12);
    expect(joined!.outer.map((v) => v.by).sort()).toEqual(["a", "a", "a", "b", "b", "b"]);
  });

  it("stay two where they only touch at a corner or as tangent discs", () => {
    expect(areas(union([box(0, 0, 10, 10, "a"), box(10, 10, 20, 20, "b")]))).toEqual([100, 100]);
    expect(union([disc(0, 0, 5, "a"), disc(10, 0, 5, "b")])).toHaveLength(2);
    expect(intersection(disc(0, 0, 5, "a"), disc(10, 0, 5, "b"))).toEqual([]);
  });

  it("cut with no film left: a notch flush with the edge, a disc as wide as the square", () => {
    expect(areas(difference(box(0, 0, 10, 10, "a"), [box(0, 0, 2, 2, "n")]))).toEqual([96]);
    expect(areas(difference(box(0, 0, 10, 10, "a"), [disc(5, 5, 5, "c")]))).toEqual(
      Array.from({ length: 4 }, () => expect.closeTo((100 - 25 * Math.PI) / 4, 9)),
    );
    expect(difference(box(0, 0, 10, 10, "a"), [box(0, 0, 10, 10, "b")])).toEqual([]);
    expect(difference(disc(3, 4, 10, "a"), [disc(3, 4, 10, "b")])).toEqual([]);
  });

  it("keep concentric and tangent arcs whole", () => {
    const [ring] = difference(disc(0, 0, 20, "out"), [disc(0, 0, 12, "in")]);
    expect(ring!.holes).toHaveLength(1);
    expect(areaOfRegion(ring!)).toBeCloseTo(Math.PI * (400 - 144), 9);
    const [joined, ...more] = union([disc(0, 0, 5, "a"), disc(10, 0, 5, "b"), disc(5, 0, 10, "c")]);
    expect(more).toEqual([]);
    expect(joined!.outer).toHaveLength(2);
    expect(areaOfRegion(joined!)).toBeCloseTo(100 * Math.PI, 9);
  });

  it("agree with the formula of the lens", () => {
    // 2 r^2 acos(d / 2r) - (d / 2) sqrt(4 r^2 - d^2): Weisstein, "Circle-Circle Intersection", MathWorld (from memory)
    const lens = 2 * 25 * Math.acos(0.3) - 1.5 * Math.sqrt(100 - 9);
    expect(areas(intersection(disc(0, 0, 5, "a"), disc(3, 0, 5, "b")))).toEqual([expect.closeTo(lens, 9)]);
  });
});

describe("holes", () => {
  const frame = solid(rectangle(0, 0, 100, 60, "frame"), rectangle(10, 10, 90, 50, "window"));

  it("are filled by what is put in them, and keep what stands free in them as an island", () => {
    expect(areas(union([frame, box(10, 10, 90, 50, "pane")]))).toEqual([6000]);
    const [outer, island] = union([frame, disc(50, 30, 10, "knob")]);
    expect(outer!.holes).toHaveLength(1);
    expect(areaOfRegion(island!)).toBeCloseTo(100 * Math.PI, 9);
  });

  it("are made by several cutters at once, that may overlap", () => {
    const [cut] = difference(box(0, 0, 100, 60, "plate"), [
      disc(40, 30, 10, "a"),
      disc(50, 30, 10, "b"),
      disc(80, 30, 5, "c"),
    ]);
    expect(cut!.holes).toHaveLength(2);
    expect(cut!.holes.flat().map((v) => v.by)).toEqual(expect.arrayContaining(["a", "b", "c"]));
  });

  it("part a plate that is cut through", () => {
    expect(areas(difference(frame, [box(45, -5, 55, 65, "saw")]))).toEqual([
      expect.closeTo(1300, 9),
      expect.closeTo(1300, 9),
    ]);
  });
});

it("keeps the corners that nothing touches to the last digit", () => {
  const plate = box(0.1, 0.2, 100.3, 60.7, "plate");
  const [cut] = difference(plate, [disc(50, 60.7, 7, "bite")]);
  for (const corner of plate.outer) expect(cut!.outer.some((v) => v.x === corner.x && v.y === corner.y)).toBe(true);
});
