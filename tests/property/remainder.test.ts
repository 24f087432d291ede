import {
  areaPathsD,
  differenceD,
  EndType,
  FillRule,
  inflatePathsD,
  intersectD,
  JoinType,
  type PathsD,
  unionD,
} from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { rectangle } from "../../src/geometry/shapes.js";
import { tessellate } from "../../src/geometry/tessellate.js";
import type { NestedSheet } from "../../src/model/build.js";
import type { NestOrder } from "../../src/nest/engine.js";
import { toSheet } from "../../src/nest/placed.js";
import { type Remainder, remainderOf } from "../../src/nest/remainder.js";
import { nestShapes } from "../../src/nest/shapes/sheets.js";
import { sampleShop } from "../fixtures/jobAndShop.js";
import { blankPart, orderOf } from "./nestOrders.js";
import { shapeOrders } from "./nestShapesOrders.js";

// What is left of generated sheets, looked at by clipper2: polygons within `chord` of the arcs, its own offsets.

const chord = 0.01;
const decimals = 6;
const least = { length: 120, width: 60 };
const kerf = 3.2;
const shop = { saw: { ...sampleShop.saw, kerf }, "least offcut": least };

const pathsOf = ({ outer, holes }: Region): PathsD => [
  tessellate(outer, chord),
  ...holes.map((hole) => tessellate(hole, chord).reverse()),
];
const areaOf = (paths: PathsD) => Math.abs(areaPathsD(paths));
const moved = (paths: PathsD, by: number, join = JoinType.Round) =>
  inflatePathsD(paths, by, join, EndType.Polygon, 4, decimals, chord / 4);
const minus = (a: PathsD, b: PathsD) => differenceD(a, b, FillRule.NonZero, decimals);
const both = (a: PathsD, b: PathsD) => intersectD(a, b, FillRule.NonZero, decimals);
const wholeOf = ({ length, width, outline }: NestedSheet): Profile => outline ?? rectangle(0, 0, length, width, "edge");

type Laid = { readonly sheet: NestedSheet; readonly rest: Remainder; readonly taken: PathsD; readonly within: PathsD };

/** Every sheet that the search fills of a generated order, with what it leaves and what clipper2 says is taken. */
function laidOf(order: NestOrder): Laid[] {
  const parts = order.items.map(({ id, shape }) => blankPart(id, "one", shape));
  const { process } = orderOf(parts, {}, (part) => ({ gap: order.items[parts.indexOf(part)]!.gap }));
  return nestShapes(order).sheets.map(({ stock, placed }): Laid => {
    const { length, width, trim, outline, zones } = order.stock[stock]!;
    const sheet: NestedSheet = {
      sheet: "one 1",
      board: parts[0]!.board,
      length,
      width,
      trim,
      ...(outline && { outline }),
      ...(zones && { zones }),
      placed: placed.map(({ item, x, y, turn }) => ({ part: parts[item]!.id, x, y, turn, backUp: false })),
    };
    const blanks = sheet.placed.flatMap((one, i) => {
      const { item } = placed[i]!;
      return moved(pathsOf(toSheet(parts[item]!, one).region(parts[item]!.blank)), order.items[item]!.gap);
    });
    const taken = unionD(
      [...blanks, ...(zones ?? []).map((zone) => tessellate(zone, chord))],
      [],
      FillRule.NonZero,
      decimals,
    );
    return {
      sheet,
      rest: remainderOf(sheet, parts, process, shop),
      taken,
      within: moved([tessellate(wholeOf(sheet), chord)], -trim),
    };
  });
}

/** mm2 that polygons of arcs and two libraries' roundings may differ by, along the boundary of a shape. */
const slack = (paths: PathsD) =>
  0.05 +
  0.04 *
    paths.reduce(
      (sum, path) =>
        sum +
        path.reduce(
          (way, p, i) => way + Math.hypot(p.x - path[(i + 1) % path.length]!.x, p.y - path[(i + 1) % path.length]!.y),
          0,
        ),
      0,
    );

const box = ({ x, y, length, width }: Remainder["rectangles"][number], by = 0): PathsD => [
  [
    { x: x - by, y: y - by },
    { x: x + length + by, y: y - by },
    { x: x + length + by, y: y + width + by },
    { x: x - by, y: y + width + by },
  ],
];

describe("what any sheet leaves", () => {
  it("meets no part's gap, no zone, no trim, and is all that is wide enough of it", () => {
    let pieces = 0;
    fc.assert(
      fc.property(shapeOrders, (order) => {
        for (const { rest, taken, within } of laidOf(order)) {
          const free = minus(within, taken);
          const region = rest.regions.flatMap(pathsOf);
          pieces += rest.regions.length;
          expect(areaOf(minus(region, free))).toBeLessThan(slack(region));
          // every rectangle worth keeping that fits in what is free is in what was found
          const cores = moved(free, -least.width / 2 - 0.05, JoinType.Miter);
          const wide = both(moved(cores, least.width / 2, JoinType.Miter), free);
          const missed = minus(wide, region);
          // pieces too short are rightly missing: none that is missing holds a rectangle of the least size
          expect(holdsRectangle(missed)).toBe(false);
        }
      }),
      { seed: 20310611, numRuns: 10, endOnFailure: true },
    );
    expect(pieces).toBeGreaterThan(8);
  });

  it("has rectangles that lie in it, a kerf apart, each worth keeping, the largest first and none larger beside them", () => {
    let rectangles = 0;
    fc.assert(
      fc.property(shapeOrders, (order) => {
        for (const { rest, taken, within } of laidOf(order)) {
          const free = minus(within, taken);
          const sizes = rest.rectangles.map(({ length, width }) => length * width);
          expect([...sizes].sort((a, b) => b - a)).toEqual(sizes);
          for (const [i, one] of rest.rectangles.entries()) {
            rectangles++;
            expect(areaOf(minus(box(one, -0.01), free))).toBeLessThan(0.05);
            expect(Math.max(one.length, one.width)).toBeGreaterThanOrEqual(least.length - 1e-5);
            expect(Math.min(one.length, one.width)).toBeGreaterThanOrEqual(least.width - 1e-5);
            for (const other of rest.rectangles.slice(i + 1))
              expect(areaOf(both(box(one, kerf - 0.01), box(other)))).toBe(0);
          }
          expect(largestOnGrid(free)).toBeLessThanOrEqual((sizes[0] ?? least.length * least.width) * 1.0001);
        }
      }),
      { seed: 20310612, numRuns: 10, endOnFailure: true },
    );
    expect(rectangles).toBeGreaterThan(10);
  });
});

/** The largest rectangle worth keeping whose corners lie on a grid, by trying: no larger than the best there is. */
function largestOnGrid(free: PathsD): number {
  const xs = free.flat().map(({ x }) => x);
  const ys = free.flat().map(({ y }) => y);
  if (xs.length === 0) return 0;
  const n = 16;
  const [x0, y0] = [Math.min(...xs), Math.min(...ys)];
  const [dx, dy] = [(Math.max(...xs) - x0) / n, (Math.max(...ys) - y0) / n];
  const clear = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => {
      const cell = box({ x: x0 + i * dx, y: y0 + j * dy, length: dx, width: dy });
      return areaOf(minus(cell, free)) < 1e-6;
    }),
  );
  let best = 0;
  for (let i = 0; i < n; i++) {
    const open = Array.from({ length: n }, () => true);
    for (let k = i; k < n; k++) {
      let run = 0;
      for (let j = 0; j < n; j++) {
        open[j] = open[j]! && clear[k]![j]!;
        run = open[j] ? run + 1 : 0;
        const [w, h] = [(k - i + 1) * dx, run * dy];
        if (Math.max(w, h) >= least.length && Math.min(w, h) >= least.width) best = Math.max(best, w * h);
      }
    }
  }
  return best;
}

const holdsRectangle = (paths: PathsD): boolean =>
  areaOf(paths) >= least.length * least.width && largestOnGrid(paths) > 0;
