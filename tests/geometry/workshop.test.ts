import { expect, it } from "vitest";
import { difference, union } from "../../src/geometry/boolean.js";
import { areaOfRegion } from "../../src/geometry/measure.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import { turnRegion } from "../../src/geometry/transform.js";
import { proveBooleans, proveOffsets, proveSharpOffsets } from "./support/proof.js";

// The first thousand of the workshop shapes that the soak tries ten thousand of. Asked with coarser chords first, which is
// quicker; the limits are the same, and what disagrees is asked again with the fine ones.
const quick = 1e-3;

it("moves 1,000 workshop shapes as the polygon library does", () => {
  const { tried, faults } = proveOffsets(0, 1000, quick);
  expect(faults).toEqual([]);
  expect(Object.values(tried).reduce((sum, n) => sum + n, 0)).toBe(1000);
  expect(Object.keys(tried)).toHaveLength(13);
});

it("moves the straight-edged ones among 1,000 with sharp corners as the polygon library does", () => {
  const { tried, faults } = proveSharpOffsets(0, 1000, quick);
  expect(faults).toEqual([]);
  expect(Object.values(tried).reduce((sum, n) => sum + n, 0)).toBeGreaterThan(150);
});

it("joins, cuts and intersects 1,000 pairs of them as the polygon library does", () => {
  const { tried, faults } = proveBooleans(0, 1000, quick);
  expect(faults).toEqual([]);
  expect(tried).toEqual({ union: 1000, difference: 1000, intersection: 1000 });
});

it("sees a fault where there is one: the oracle does not pass a shape that is a tenth of a millimetre out", async () => {
  const { disagreement, oracleOffset } = await import("./support/oracle.js");
  const plate: Region = { outer: rectangle(0, 0, 300, 200, "plate"), holes: [] };
  expect(disagreement([plate], (chord) => oracleOffset(plate, 0.1, "round", chord), quick)).toMatch("area");
  const moved = { outer: rectangle(0.1, 0, 300.1, 200, "plate"), holes: [] };
  expect(disagreement([moved], (chord) => oracleOffset(plate, 0, "round", chord), quick)).toMatch("boundary");
});

const solid = (outer: Profile): Region => ({ outer, holes: [] });
const areas = (regions: readonly Region[]) => regions.map(areaOfRegion);

// faults that the oracle found, each with the shape that showed it

it("keeps a hole that touches the disc around it in the middle of its longest edge", () => {
  const plate = { outer: rectangle(0, 0, 200, 120, "a"), holes: [circle({ x: 55, y: 60 }, 6, "h")] };
  const frame = { outer: rectangle(-10, -10, 300, 200, "b"), holes: [circle({ x: 55, y: 69 }, 15, "k")] };
  expect(areas(difference(plate, [frame]))).toEqual([expect.closeTo(Math.PI * (225 - 36), 8)]);
});

it("does not take two collinear edges that meet end to end for crossing ones", () => {
  // a bracket and the plate that closes its bay, turned so that their common line is one but for noise
  const box = (x0: number, y0: number, x1: number, y1: number) => solid(rectangle(x0, y0, x1, y1, "e"));
  const parts = [box(-30, 0, 0, 9), box(-30, 9, -20, 13), box(-30, 13, 0, 22), box(0, 9, 20, 60)];
  for (let turn = 0; turn < 1; turn += 0.005) {
    const joined = union(parts.map((part) => turnRegion(part, turn)));
    expect(areas(joined)).toEqual([expect.closeTo(2 * 270 + 40 + 1020, 8)]);
    expect(joined[0]!.holes).toHaveLength(1);
  }
});

it("counts an arc that begins level with a hole, though its lowest place comes out a hair higher", () => {
  const plate = { outer: rectangle(0, 0, 200, 120, "a"), holes: [circle({ x: 25, y: 60 }, 5, "h")] };
  const rounded = solid([
    { x: 45, y: 60, bulge: 0, by: "b" },
    { x: 155.89274809150956, y: 60, bulge: 0.41421356237309565, by: "b" },
    { x: 157, y: 61.10725190849043, bulge: 0, by: "b" },
    { x: 157, y: 150, bulge: 0, by: "b" },
    { x: 45, y: 150, bulge: 0, by: "b" },
  ]);
  expect(union([plate, rounded])[0]!.holes).toHaveLength(1);
});
