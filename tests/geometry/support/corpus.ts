import { fillet } from "../../../src/geometry/corners.js";
import type { Point, Profile, Region, Vertex } from "../../../src/geometry/profile.js";
import { circle, polygon, rectangle, slot } from "../../../src/geometry/shapes.js";

/** Shapes that have broken, or could break, line-and-arc geometry. Every operation runs over all of them. */
export type Awkward = { readonly name: string; readonly region: Region };

const at = (x: number, y: number): Point => ({ x, y });
const v = (x: number, y: number, bulge = 0, by = "e"): Vertex => ({ x, y, bulge, by });
const places = (...xy: readonly (readonly [number, number])[]) =>
  polygon(
    xy.map(([x, y]) => at(x, y)),
    (i) => `e${i}`,
  );
const solid = (outer: Profile, ...holes: Profile[]): Region => ({ outer, holes });
const quarter = Math.SQRT2 - 1;

/** Sound shapes. */
export const corpus: readonly Awkward[] = [
  { name: "a square", region: solid(rectangle(0, 0, 10, 10, "e")) },
  { name: "a circle of two halves", region: solid(circle(at(0, 0), 10, "c")) },
  { name: "a circle of many arcs", region: solid(arcsOfCircle(17)) },
  { name: "nearly a whole circle in one arc, closed by a line", region: solid([v(0, 0, 30), v(0.5, 0)]) },
  { name: "an arc of three quarters", region: solid([v(0, 0, 1 + Math.SQRT2), v(10, 10)]) },
  { name: "a lens of two equal arcs", region: solid([v(0, 0, 0.3), v(50, 0, 0.3)]) },
  { name: "a lens as thin as 0.02", region: solid([v(0, 0, 2e-4), v(100, 0, 2e-4)]) },
  { name: "a moon, its arcs all but tangent at the tips", region: solid([v(0, 0, 1), v(40, 0, -0.98)]) },
  { name: "a stadium", region: solid(slot(at(0, 0), at(40, 0), 12, "s")) },
  { name: "a slot whose ends all but meet", region: solid(slot(at(0, 0), at(0.001, 0), 12, "s")) },
  { name: "an arc so flat that it is a line", region: solid([v(0, 0, 1e-10), v(100, 0), v(100, 50), v(0, 50)]) },
  { name: "an arc of 100 m radius", region: solid([v(0, 0, 0.00125), v(1000, 0), v(1000, 300), v(0, 300)]) },
  {
    name: "edges of a thousandth",
    region: solid(places([0, 0], [50, 0], [50, 0.001], [50.001, 0.001], [50.001, 30], [0, 30])),
  },
  { name: "an edge of a ten-millionth", region: solid(places([0, 0], [50, 0], [50, 1e-7], [50, 30], [0, 30])) },
  {
    name: "collinear corners all round",
    region: solid(places([0, 0], [20, 0], [40, 0], [40, 10], [40, 30], [15, 30], [0, 30], [0, 7])),
  },
  { name: "a rectangle 12 wide, for an offset of 6", region: solid(rectangle(0, 0, 80, 12, "e")) },
  {
    name: "a tab 12 wide on a plate",
    region: solid(places([0, 0], [80, 0], [80, 40], [46, 40], [46, 60], [34, 60], [34, 40], [0, 40])),
  },
  {
    name: "a slit 12 wide in a plate",
    region: solid(places([0, 0], [80, 0], [80, 40], [46, 40], [46, 10], [34, 10], [34, 40], [0, 40])),
  },
  {
    name: "two rooms with a neck of 12",
    region: solid(
      places(
        [0, 0],
        [40, 0],
        [40, 14],
        [60, 14],
        [60, 0],
        [100, 0],
        [100, 40],
        [60, 40],
        [60, 26],
        [40, 26],
        [40, 40],
        [0, 40],
      ),
    ),
  },
  {
    name: "a bay with a mouth of 12",
    region: solid(
      places(
        [0, 0],
        [80, 0],
        [80, 60],
        [46, 60],
        [46, 50],
        [70, 50],
        [70, 10],
        [10, 10],
        [10, 50],
        [34, 50],
        [34, 60],
        [0, 60],
      ),
    ),
  },
  { name: "a comb", region: solid(comb(12)) },
  { name: "a spiral", region: solid(spiral()) },
  { name: "a star with needle points", region: solid(star(9, 100, 8)) },
  {
    name: "a rounded plate whose radius is the offset",
    region: solid(fillet(rectangle(0, 0, 90, 60, "e"), 6).profile),
  },
  { name: "a rounded plate with hollow notches", region: solid(fillet(comb(4), 1.5).profile) },
  {
    name: "arcs that run smoothly left and right",
    region: solid([v(0, 0, quarter), v(20, 0, -quarter), v(40, 0, quarter), v(60, 0), v(60, 50), v(0, 50)]),
  },
  {
    name: "a bite out of an edge, tangent to it at one end",
    region: solid([v(0, 0), v(40, 0, -1), v(40, 20), v(40, 50), v(0, 50)]),
  },
  { name: "a ring 12 wide", region: solid(circle(at(0, 0), 40, "out"), circle(at(0, 0), 28, "in")) },
  {
    name: "a ring off its centre, touching inside",
    region: solid(circle(at(0, 0), 40, "out"), circle(at(15, 0), 25, "in")),
  },
  {
    name: "a plate with touching holes",
    region: solid(rectangle(0, 0, 100, 50, "e"), circle(at(30, 25), 10, "h"), circle(at(50, 25), 10, "k")),
  },
  {
    name: "a plate with a hole flush with its edge",
    region: solid(rectangle(0, 0, 100, 50, "e"), rectangle(40, 0, 60, 20, "h")),
  },
  {
    name: "a hole that touches the edge with its corner",
    region: solid(rectangle(0, 0, 100, 50, "e"), places([50, 0], [60, 10], [50, 20], [40, 10])),
  },
  {
    name: "a plate ten metres from the origin",
    region: solid(fillet(rectangle(10_000, 10_000, 10_090, 10_060, "e"), 5).profile),
  },
  { name: "a pentagon turned by a golden angle", region: solid(regular(5, 50, 2.399963)) },
  { name: "a hundred-sided wheel", region: solid(regular(100, 80, 0.01)) },
];

/** What is no shape at all, or not one that can be built on. Nothing may throw on them. */
export const broken: readonly Awkward[] = [
  { name: "no vertices", region: solid([]) },
  { name: "one vertex", region: solid([v(3, 3)]) },
  { name: "two vertices and straight edges", region: solid([v(0, 0), v(10, 0)]) },
  { name: "all vertices in one place", region: solid([v(3, 3), v(3, 3), v(3, 3)]) },
  { name: "no area: out and back", region: solid(places([0, 0], [10, 0], [20, 0], [10, 0])) },
  { name: "repeated points", region: solid([v(0, 0), v(10, 0), v(10, 0), v(10, 10), v(0, 10), v(0, 10)]) },
  { name: "the wrong way round", region: solid([v(0, 0), v(0, 10), v(10, 10), v(10, 0)]) },
  { name: "a bow tie", region: solid([v(0, 0), v(10, 10), v(10, 0), v(0, 8)]) },
  {
    name: "a pentagram",
    region: solid([0, 2, 4, 1, 3].map((k) => v(50 * Math.cos(k * 1.2566), 50 * Math.sin(k * 1.2566)))),
  },
  { name: "arcs that cross", region: solid([v(0, 0), v(10, 0), v(10, 5, 1.2), v(0, 5, -1.2)]) },
  {
    name: "a spike without width",
    region: solid(places([0, 0], [50, 0], [50, 20], [80, 20], [50, 20], [50, 40], [0, 40])),
  },
  { name: "a NaN", region: solid([v(0, 0), v(10, Number.NaN), v(10, 10)]) },
  { name: "an endless coordinate", region: solid([v(0, 0), v(Number.POSITIVE_INFINITY, 0), v(10, 10)]) },
  { name: "a NaN bulge", region: solid([v(0, 0, Number.NaN), v(10, 0), v(10, 10)]) },
  { name: "a hole outside its outer", region: solid(rectangle(0, 0, 10, 10, "e"), rectangle(20, 0, 30, 10, "h")) },
  { name: "a hole that reaches out", region: solid(rectangle(0, 0, 10, 10, "e"), rectangle(5, 5, 15, 8, "h")) },
  { name: "a hole over all", region: solid(rectangle(0, 0, 10, 10, "e"), rectangle(-1, -1, 11, 11, "h")) },
  {
    name: "holes that overlap",
    region: solid(rectangle(0, 0, 50, 50, "e"), circle(at(20, 20), 8, "h"), circle(at(25, 20), 8, "k")),
  },
];

function arcsOfCircle(n: number): Profile {
  const bulge = Math.tan(Math.PI / (2 * n));
  return Array.from({ length: n }, (_, i) =>
    v(30 * Math.cos((2 * Math.PI * i) / n), 30 * Math.sin((2 * Math.PI * i) / n), bulge, `a${i}`),
  );
}

function regular(n: number, radius: number, from: number): Profile {
  const angle = (i: number) => from + (2 * Math.PI * i) / n;
  return Array.from({ length: n }, (_, i) => v(radius * Math.cos(angle(i)), radius * Math.sin(angle(i)), 0, `e${i}`));
}

function star(n: number, outer: number, inner: number): Profile {
  return Array.from({ length: 2 * n }, (_, i) => {
    const away = i % 2 === 0 ? outer : inner;
    return v(away * Math.cos((Math.PI * i) / n), away * Math.sin((Math.PI * i) / n), 0, `e${i}`);
  });
}

function comb(n: number): Profile {
  const xy: [number, number][] = [
    [0, 0],
    [n * 20, 0],
  ];
  for (let i = n - 1; i >= 0; i--) xy.push([i * 20 + 20, 50], [i * 20 + 12, 50], [i * 20 + 12, 15], [i * 20, 15]);
  return places(...xy.filter(([x], i) => i < 2 || x > 0), [0, 15]);
}

function spiral(): Profile {
  const out: [number, number][] = [];
  const back: [number, number][] = [];
  for (let k = 0; k <= 60; k++) {
    const angle = k * 0.25;
    out.push([(20 + 3 * angle) * Math.cos(angle), (20 + 3 * angle) * Math.sin(angle)]);
    back.push([(12 + 3 * angle) * Math.cos(angle), (12 + 3 * angle) * Math.sin(angle)]);
  }
  return places(...out, ...back.reverse());
}
