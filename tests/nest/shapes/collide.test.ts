import { describe, expect, it } from "vitest";
import type { Region } from "../../../src/geometry/profile.js";
import { collide } from "../../../src/nest/shapes/collide.js";
import { grownLoops } from "../../../src/nest/shapes/grown.js";
import { shapeOf } from "../../../src/nest/shapes/shape.js";
import { disc, panel, ringOf, triangle } from "./orders.js";

const shape = (region: Region, turn = 0) => shapeOf(0, 0, grownLoops(region, 0), turn, 1e-6);

describe("two shapes", () => {
  it("do not collide where they only touch, and do a hundredth of a millimetre further", () => {
    const a = shape(panel(100, 50));
    expect(collide(a, a, 100, 0)).toBe(false);
    expect(collide(a, a, 99.99, 0)).toBe(true);
    expect(collide(a, a, 100, 50)).toBe(false);
    expect(collide(a, a, 99.99, 49.99)).toBe(true);
    expect(collide(a, a, 0, 0)).toBe(true);
  });

  it("leave a ring's hole free for a disc that fits, wherever in it", () => {
    const ring = shape(ringOf(200, 120));
    expect(collide(ring, shape(disc(100)), 0, 0)).toBe(false);
    expect(collide(ring, shape(disc(100)), 9.9, 0)).toBe(false);
    expect(collide(ring, shape(disc(100)), 10.1, 0)).toBe(true);
    expect(collide(shape(disc(100)), ring, 0, 0)).toBe(false);
  });

  it("collide where one covers the other's hole without crossing its edges", () => {
    const ring = shape(ringOf(138.75, 55.5));
    expect(collide(ring, shape(disc(114.75)), -5, -3.5)).toBe(true);
    expect(collide(shape(disc(114.75)), ring, 5, 3.5)).toBe(true);
    expect(collide(ring, shape(disc(20)), 48, 0)).toBe(true);
    expect(collide(shape(disc(20)), ring, -48, 0)).toBe(true);
  });

  it("may share a box where their slanting sides face each other", () => {
    const a = shape(triangle(100, 100));
    const b = shape(triangle(100, 100), Math.PI);
    expect(collide(a, b, 100.02, 100.02)).toBe(false);
    expect(collide(a, b, 99.98, 99.98)).toBe(true);
  });
});
