import { describe, expect, it } from "vitest";
import { areaOfRegion, lengthOfPath } from "../../src/geometry/measure.js";
import { widen } from "../../src/geometry/offset.js";
import { offsetPath } from "../../src/geometry/offsetPath.js";
import { clipPath } from "../../src/geometry/path.js";
import type { Path } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";

const at = (x: number, y: number, bulge = 0) => ({ x, y, bulge, by: "groove" });
const hole = (x: number, y: number, r: number) => ({ outer: circle({ x, y }, r, "hole"), holes: [] });
const quarter = Math.SQRT2 - 1;

describe("a groove that stops short of holes", () => {
  const line: Path = [at(0, 0), at(100, 0)];

  it("falls into the runs between them", () => {
    const runs = clipPath(line, false, [hole(30, 0, 5), hole(60, 3, 5)], "outside");
    expect(runs.map((run) => run.map((v) => v.x))).toEqual([
      [0, expect.closeTo(25, 9)],
      [expect.closeTo(35, 9), expect.closeTo(56, 9)],
      [expect.closeTo(64, 9), 100],
    ]);
    expect(runs[0]![0]!.by).toBe("groove");
  });

  it("is whole where no hole is near, and touches none that it only grazes", () => {
    expect(clipPath(line, false, [hole(30, 5, 5)], "outside")).toEqual([line]);
    expect(clipPath(line, false, [hole(30, 50, 5)], "outside")).toEqual([line]);
    expect(clipPath(line, false, [], "inside")).toEqual([]);
  });

  it("runs on over the start of a closed loop", () => {
    const loop = rectangle(0, 0, 100, 60, "groove");
    const [run, ...more] = clipPath(loop, true, [hole(50, 60, 5)], "outside");
    expect(more).toEqual([]);
    expect(lengthOfPath(run!)).toBeCloseTo(310, 9);
    const [whole] = clipPath(loop, true, [hole(50, 30, 5)], "outside");
    expect(lengthOfPath(whole!)).toBeCloseTo(320, 9);
    expect(clipPath(loop, true, [hole(50, 60, 5)], "inside").map(lengthOfPath)).toEqual([expect.closeTo(10, 9)]);
  });

  it("keeps its arcs", () => {
    const bend: Path = [at(0, 0), at(50, 0, quarter), at(60, 10), at(60, 50)];
    const runs = clipPath(bend, false, [hole(57, 3, 2)], "outside");
    expect(runs).toHaveLength(2);
    expect(runs[0]!.some((v) => v.bulge > 0)).toBe(true);
    const total = 90 + 5 * Math.PI;
    const cut = 2 * 2 * Math.asin(Math.sqrt(1) / 10) * 10; // about twice the hole's radius along the bend
    expect(runs.reduce((sum, run) => sum + lengthOfPath(run), 0)).toBeGreaterThan(total - cut * 1.1);
  });
});

describe("an open chain moved sideways", () => {
  it("rounds the corner that opens and trims the one that closes", () => {
    const bend: Path = [at(0, 0), at(50, 0), at(50, 40)];
    const [right] = offsetPath(bend, 5);
    expect(lengthOfPath(right!)).toBeCloseTo(90 + (Math.PI * 5) / 2, 9);
    expect(right![1]!.bulge).toBe(0 + right![1]!.bulge);
    const [left] = offsetPath(bend, -5);
    expect(left!.map(({ x, y }) => [x, y])).toEqual([
      [0, 5],
      [expect.closeTo(45, 9), expect.closeTo(5, 9)],
      [45, 40],
    ]);
  });

  it("vanishes where the bend is tighter than the distance, and splits at a neck", () => {
    const tight: Path = [at(0, 0, 1), at(6, 0)];
    expect(offsetPath(tight, -4)).toEqual([]);
    const rooms: Path = [
      [0, 0],
      [0, 30],
      [30, 30],
      [30, 17],
      [40, 17],
      [40, 30],
      [70, 30],
      [70, 0],
      [40, 0],
      [40, 13],
      [30, 13],
      [30, 0],
      [5, 0],
    ].map(([x, y]) => at(x!, y!));
    // in the first room on the way out, round the second, in the first on the way back
    expect(offsetPath(rooms, 1.9)).toHaveLength(1);
    expect(offsetPath(rooms, 3)).toHaveLength(3);
  });

  it("clears the room of the bit along it, ends round", () => {
    const [cleared, ...more] = widen([at(0, 0), at(50, 0, quarter), at(60, 10), at(60, 50)], 3);
    expect(more).toEqual([]);
    expect(areaOfRegion(cleared!)).toBeCloseTo((90 + 5 * Math.PI) * 6 + Math.PI * 9, 6);
  });
});
