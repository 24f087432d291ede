import { describe, expect, it } from "vitest";
import { arcOf, bulgeOfSweep, bulgeThrough, midpoint, radiusOf, sagittaOf } from "../../src/geometry/arc.js";
import { distanceBetween, nearestOn } from "../../src/geometry/distance.js";
import { pointInProfile, pointInRegion } from "../../src/geometry/inside.js";
import { areaOf, areaOfRegion, centroidOf, extentsOf, isCircle, lengthOf } from "../../src/geometry/measure.js";
import type { Profile } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle, slot } from "../../src/geometry/shapes.js";
import { tessellate } from "../../src/geometry/tessellate.js";
import { mirrored, turned } from "../../src/geometry/transform.js";

const at = (x: number, y: number) => ({ x, y });

describe("arcs by bulge", () => {
  it("gives a quarter turn the bulge that the DXF definition gives it", () => {
    // bulge = tan(included angle / 4), DXF Reference, LWPOLYLINE code 42
    expect(bulgeOfSweep(Math.PI / 2)).toBeCloseTo(0.41421356, 8);
    expect(bulgeOfSweep(Math.PI / 6)).toBeCloseTo(0.131652, 6);
    expect(bulgeOfSweep(Math.PI / 4)).toBeCloseTo(0.198912, 6);
    expect(bulgeOfSweep(Math.PI)).toBeCloseTo(1, 12);
  });

  it("finds radius and sagitta of a chord of 100 with a quarter turn", () => {
    // r = chord (1 + b^2) / (4 |b|), sagitta = |b| chord / 2: DXF Reference (sagitta over half the chord), computed
    expect(radiusOf(100, 0.41421356)).toBeCloseTo(70.7107, 4);
    expect(sagittaOf(100, 0.41421356)).toBeCloseTo(20.7107, 4);
  });

  it("passes through the middle point it was asked to pass through, short way and long way, left and right", () => {
    for (const bulge of [0.1, -0.1, 0.9, -0.9, 1, 2.5, -2.5]) {
      const a = { x: 3, y: -2, bulge, by: "e" };
      const b = at(40, 11);
      expect(bulgeThrough(a, midpoint(a, b), b)).toBeCloseTo(bulge, 10);
    }
    expect(bulgeThrough(at(0, 0), at(1, 0), at(5, 0))).toBe(0);
  });

  it("turns about a centre that lies left of an arc that turns left", () => {
    const arc = arcOf({ x: 1, y: 0, bulge: bulgeOfSweep(Math.PI / 2), by: "e" }, at(0, 1));
    expect(arc.center.x).toBeCloseTo(0, 12);
    expect(arc.center.y).toBeCloseTo(0, 12);
    expect(arc.sweep).toBeCloseTo(Math.PI / 2, 12);
    expect(arc.start).toBeCloseTo(0, 12);
  });
});

describe("measures", () => {
  const ring = { outer: circle(at(10, 20), 50, "out"), holes: [circle(at(10, 20), 40, "in")] };
  const half: Profile = [
    { x: -10, y: 0, bulge: 0, by: "flat" },
    { x: 10, y: 0, bulge: 1, by: "round" },
  ];

  it("agrees with the formulas of the circle, the ring and the slot", () => {
    expect(areaOf(circle(at(5, 5), 7, "c"))).toBeCloseTo(Math.PI * 49, 9);
    expect(lengthOf(circle(at(5, 5), 7, "c"))).toBeCloseTo(Math.PI * 14, 9);
    expect(areaOfRegion(ring)).toBeCloseTo(Math.PI * (2500 - 1600), 8);
    expect(areaOf(slot(at(0, 0), at(30, 40), 12, "s"))).toBeCloseTo(50 * 12 + Math.PI * 36, 9);
    expect(lengthOf(slot(at(0, 0), at(30, 40), 12, "s"))).toBeCloseTo(100 + Math.PI * 12, 9);
  });

  it("finds the centre of a half disc where mechanics puts it", () => {
    // 4 r / (3 pi) above the flat side: Beer and Johnston, centroids of common shapes (from memory)
    expect(centroidOf(half).x).toBeCloseTo(0, 10);
    expect(centroidOf(half).y).toBeCloseTo(40 / (3 * Math.PI), 10);
    expect(centroidOf(ring)).toEqual({ x: expect.closeTo(10, 9), y: expect.closeTo(20, 9) });
  });

  it("counts the bow of an arc in the extents", () => {
    expect(extentsOf(half).max.y).toBeCloseTo(10, 12);
    expect(extentsOf(turned(half, 0.3)).min.y).toBeCloseTo(-10 * Math.sin(0.3), 12);
  });

  it("knows a circle however it is cut up, and nothing else", () => {
    expect(isCircle(turned(circle(at(3, 4), 5, "c"), 1))?.radius).toBeCloseTo(5, 12);
    const q = bulgeOfSweep(Math.PI / 2);
    const four = [at(5, 0), at(0, 5), at(-5, 0), at(0, -5)].map((p) => ({ ...p, bulge: q, by: "c" }));
    expect(isCircle(four)?.center.x).toBeCloseTo(0, 12);
    expect(isCircle(half)).toBeUndefined();
    expect(isCircle(slot(at(0, 0), at(1e-3, 0), 10, "s"))).toBeUndefined();
  });

  it("needs 112 chords for a circle of radius 125 within 0.05", () => {
    // 2 pi / (2 acos(1 - 0.05 / 125)) = 111.07, computed
    expect(tessellate(circle(at(0, 0), 125, "c"), 0.05)).toHaveLength(112);
  });

  it("keeps area and order when mirrored, and the names of the edges", () => {
    const plate = rectangle(0, 0, 30, 20, ["bottom", "right", "top", "left"]);
    const seen = mirrored(plate);
    expect(areaOf(seen)).toBeCloseTo(600, 12);
    const bottom = seen.findIndex((v) => v.by === "bottom");
    expect([seen[bottom]!.y, seen[(bottom + 1) % 4]!.y]).toEqual([0, 0]);
    const right = seen.findIndex((v) => v.by === "right");
    expect([seen[right]!.x, seen[(right + 1) % 4]!.x]).toEqual([-30, -30]);
    expect(areaOf(mirrored(half))).toBeCloseTo(areaOf(half), 12);
    expect(mirrored(mirrored(half))).toEqual(half);
  });
});

describe("inside and apart", () => {
  const ring = { outer: circle(at(0, 0), 50, "out"), holes: [circle(at(0, 0), 40, "in")] };

  it("counts the edge as inside", () => {
    expect(pointInProfile(circle(at(0, 0), 10, "c"), at(10, 0))).toBe(true);
    expect(pointInRegion(ring, at(0, 40))).toBe(true);
    expect(pointInRegion(ring, at(0, 39.9))).toBe(false);
    expect(pointInRegion(ring, at(-45, 0))).toBe(true);
  });

  it("tells inside from outside on the chord of an arc, in every direction", () => {
    for (let k = 0; k < 16; k++) {
      const angle = (k * Math.PI) / 8;
      const shape = turned(
        [
          { x: -10, y: 0, bulge: 0.4, by: "bow" },
          { x: 10, y: 0, bulge: 0, by: "right" },
          { x: 10, y: 20, bulge: -0.4, by: "bite" },
          { x: -10, y: 20, bulge: 0, by: "left" },
        ],
        angle,
      );
      const turn = (x: number, y: number) => turned([{ x, y, bulge: 0, by: "" }], angle)[0]!;
      expect(pointInProfile(shape, turn(3, 0))).toBe(true);
      expect(pointInProfile(shape, turn(0, 20))).toBe(false);
      expect(pointInProfile(shape, turn(0, -3.9))).toBe(true);
      expect(pointInProfile(shape, turn(0, -4.1))).toBe(false);
    }
  });

  it("finds the nearest place on a round and on a straight edge", () => {
    expect(nearestOn(circle(at(0, 0), 10, "c"), at(30, 40))?.distance).toBeCloseTo(40, 12);
    const near = nearestOn(rectangle(0, 0, 30, 20, ["b", "r", "t", "l"]), at(33, 5));
    expect(near).toEqual({ at: at(30, 5), distance: 3, edge: 1, by: "r" });
  });

  it("measures the gap between regions, none where they overlap or lie in each other", () => {
    const disc = (x: number, r: number) => ({ outer: circle(at(x, 0), r, "d"), holes: [] });
    expect(distanceBetween(disc(0, 10), disc(35, 5))).toBeCloseTo(20, 10);
    expect(distanceBetween(disc(0, 10), disc(12, 5))).toBe(0);
    expect(distanceBetween(disc(0, 10), disc(1, 2))).toBe(0);
    expect(distanceBetween(ring, disc(10, 5))).toBeCloseTo(25, 10);
    const square = { outer: rectangle(20, 20, 40, 40, "s"), holes: [] };
    expect(distanceBetween(disc(0, 10), square)).toBeCloseTo(Math.hypot(20, 20) - 10, 10);
  });

  it("puts polygons counter-clockwise whichever way they are given", () => {
    expect(areaOf(polygon([at(0, 0), at(0, 5), at(5, 5)], "p"))).toBeCloseTo(12.5, 12);
  });
});
