import type { Point, Profile, Vertex } from "./profile.js";

/** The names of a rectangle's edges, in the order in which they are walked. */
export type EdgeNames = readonly [bottom: string, right: string, top: string, left: string];

/** An axis-parallel rectangle between two corners, whichever way round they are given. */
export function rectangle(x0: number, y0: number, x1: number, y1: number, by: string | EdgeNames): Profile {
  const [left, right] = x0 < x1 ? [x0, x1] : [x1, x0];
  const [bottom, top] = y0 < y1 ? [y0, y1] : [y1, y0];
  const names = typeof by === "string" ? [by, by, by, by] : by;
  const corners: Point[] = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return corners.map((p, i) => ({ ...p, bulge: 0, by: names[i]! }));
}

/** A full circle as two half circles: no single bulge can be a whole turn. */
export function circle(center: Point, radius: number, by: string): Profile {
  return [
    { x: center.x - radius, y: center.y, bulge: 1, by },
    { x: center.x + radius, y: center.y, bulge: 1, by },
  ];
}

/** Straight edges through the points, counter-clockwise whichever way round they are given; edge i leaves point i. */
export function polygon(points: readonly Point[], by: string | ((i: number) => string)): Profile {
  const name = typeof by === "string" ? () => by : by;
  const vertices: Vertex[] = points.map((p, i) => ({ x: p.x, y: p.y, bulge: 0, by: name(i) }));
  return twiceArea(points) < 0 ? againstTheClock(vertices) : vertices;
}

/** A slot with round ends around the line from `a` to `b`, which are the centres of its ends. */
export function slot(a: Point, b: Point, width: number, by: string): Profile {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length === 0) return circle(a, width / 2, by);
  const nx = (((b.y - a.y) / length) * width) / 2;
  const ny = ((-(b.x - a.x) / length) * width) / 2;
  return [
    { x: a.x + nx, y: a.y + ny, bulge: 0, by },
    { x: b.x + nx, y: b.y + ny, bulge: 1, by },
    { x: b.x - nx, y: b.y - ny, bulge: 0, by },
    { x: a.x - nx, y: a.y - ny, bulge: 1, by },
  ];
}

/** The same loop walked the other way: each edge keeps its own bulge (with the other sign) and name. */
export function againstTheClock(profile: Profile): Profile {
  const n = profile.length;
  return profile.map((_, i) => {
    const at = profile[n - 1 - i]!;
    const edge = profile[(2 * n - 2 - i) % n]!;
    return { x: at.x, y: at.y, bulge: edge.bulge === 0 ? 0 : -edge.bulge, by: edge.by };
  });
}

function twiceArea(points: readonly Point[]): number {
  let sum = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    sum += p.x * q.y - p.y * q.x;
  });
  return sum;
}
