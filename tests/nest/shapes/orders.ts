import type { Profile, Region } from "../../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../../src/geometry/shapes.js";
import type { NestItem, NestOrder, NestStock } from "../../../src/nest/engine.js";

// Orders of a workshop's kind, made for these tests. mm.

const quarters = [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2];

export const panel = (length: number, width: number): Region => ({
  outer: rectangle(0, 0, length, width, "side"),
  holes: [],
});
export const disc = (diameter: number): Region => ({ outer: circle({ x: 0, y: 0 }, diameter / 2, "edge"), holes: [] });
export const ringOf = (outside: number, inside: number): Region => ({
  outer: circle({ x: 0, y: 0 }, outside / 2, "outside"),
  holes: [circle({ x: 0, y: 0 }, inside / 2, "inside")],
});
export const triangle = (length: number, width: number): Region => ({
  outer: polygon(
    [
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: 0, y: width },
    ],
    "side",
  ),
  holes: [],
});

export function items(shapes: readonly (readonly [count: number, shape: Region])[], gap: number): NestItem[] {
  return shapes.flatMap(([count, shape], kind) =>
    Array.from({ length: count }, (_, n) => ({ id: `${kind}.${n}`, shape, gap, turns: quarters })),
  );
}

export const sheet = (length: number, width: number, more: Partial<NestStock> = {}): NestStock => ({
  name: `${length} x ${width}`,
  length,
  width,
  trim: 0,
  cost: 30,
  ...more,
});

export const orderOf = (list: readonly NestItem[], stock: readonly NestStock[], iterations = 200): NestOrder => ({
  items: list,
  stock,
  edgeToEdge: false,
  seed: 1,
  iterations,
});

/** An offcut with a slanting side, as a measured outline. */
export const slanted = (length: number, width: number, cut: number): Profile =>
  polygon(
    [
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: length, y: width - cut },
      { x: length - cut, y: width },
      { x: 0, y: width },
    ],
    "edge",
  );
