import { expect, it } from "vitest";
import { difference, union } from "../../src/geometry/boolean.js";
import { areaOfRegion } from "../../src/geometry/measure.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import { proveBooleans, proveOffsets } from "./support/proof.js";

// The first thousand of the workshop shapes that the soak tries ten thousand of. Asked with coarser chords first, which is
// quicker; the limits are the same, and what disagrees is asked again with the fine ones.
const quick = 1e-3;

it("moves 500 workshop shapes as the polygon library does", () => {
  const { tried, faults } = proveOffsets(0, 500, quick);
  expect(faults).toEqual([]);
  expect(Object.values(tried).reduce((sum, n) => sum + n, 0)).toBe(500);
  expect(Object.keys(tried)).toHaveLength(13);
});

it("joins, cuts and intersects 500 pairs of them as the polygon library does", () => {
  const { tried, faults } = proveBooleans(0, 500, quick);
  expect(faults).toEqual([]);
  expect(tried).toEqual({ union: 500, difference: 500, intersection: 500 });
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
  // the direction is that of no axis, so that the two are collinear but for noise
  const [ux, uy] = [Math.cos(1.2582), Math.sin(1.2582)];
  const place = (along: number, off: number) => ({ x: along * ux + off * uy, y: along * uy - off * ux });
  const box = (from: number, to: number, near: number, far: number) =>
    solid(
      [place(from, near), place(from, far), place(to, far), place(to, near)].map((p) => ({ ...p, bulge: 0, by: "e" })),
    );
  const bracket = union([box(-9, 0, -30, 0), box(13, 22, -30, 0), box(-9, 22, -30, -20)]);
  expect(bracket).toHaveLength(1);
  const closed = union([...bracket, box(0, 60, 0, 20)]);
  expect(closed).toHaveLength(1);
  expect(closed[0]!.holes).toHaveLength(1);
  expect(areas(closed)[0]).toBeCloseTo(9 * 30 * 2 + 13 * 10 + 60 * 20, 8);
});
