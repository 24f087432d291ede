import { arcOf, isFlat } from "./arc.js";
import { eachEdge, extentsOf } from "./measure.js";
import { circleWithCircle, lineWithCircle, lineWithLine } from "./meet.js";
import type { Extents, Path, Point, Profile, Region, Vertex } from "./profile.js";
import { winding } from "./winding.js";

/** The place on a chain that is nearest to a point; `edge` counts from 0, `by` is that edge's name. */
export type Nearest = { readonly at: Point; readonly distance: number; readonly edge: number; readonly by: string };

/** Nearest place on a closed profile's edge; undefined only for a profile without vertices. */
export function nearestOn(profile: Profile, point: Point): Nearest | undefined {
  let best: Nearest | undefined;
  eachEdge(profile, (a, b, edge) => {
    best = nearer(best, a, b, edge, point);
  });
  return best;
}

/** Nearest place on an open chain. */
export function nearestOnPath(path: Path, point: Point): Nearest | undefined {
  let best: Nearest | undefined;
  path.slice(1).forEach((b, edge) => {
    best = nearer(best, path[edge]!, b, edge, point);
  });
  return best;
}

/** The place on one edge, from `a` to `b`, that is nearest to `p`. */
export function nearestOnEdge(a: Vertex, b: Point, p: Point): Point {
  if (isFlat(a, b)) return nearestOnLine(a, b, p);
  const { center, radius } = arcOf(a, b);
  const foot = onCircle(center, radius, p);
  if (foot !== undefined && besideArc(a, b, foot)) return foot;
  return Math.hypot(p.x - a.x, p.y - a.y) <= Math.hypot(p.x - b.x, p.y - b.y) ? at(a) : at(b);
}

/**
 * The smallest gap between two regions, mm; 0 where they touch or overlap, also where one lies inside the other. A
 * region inside a hole of the other is apart from it.
 */
export function distanceBetween(one: Region, other: Region): number {
  if (overlap(one, other)) return 0;
  const theirs = edgesOf(other);
  let best = Number.POSITIVE_INFINITY;
  for (const mine of edgesOf(one)) {
    for (const edge of theirs) {
      if (gapOfBoxes(mine.box, edge.box) < best) best = Math.min(best, edgeDistance(mine.a, mine.b, edge.a, edge.b));
    }
  }
  return best;
}

/** The smallest gap between two edges, mm; 0 where they cross. */
export function edgeDistance(a: Vertex, b: Vertex, c: Vertex, d: Vertex): number {
  if (edgesMeet(a, b, c, d)) return 0;
  const ends = [gap(a, c, d), gap(b, c, d), gap(c, a, b), gap(d, a, b)];
  return Math.min(...ends, ...feet(a, b, c, d), ...feet(c, d, a, b));
}

type Edge = { readonly a: Vertex; readonly b: Vertex; readonly box: Extents };

function nearer(best: Nearest | undefined, a: Vertex, b: Vertex, edge: number, p: Point): Nearest {
  const place = nearestOnEdge(a, b, p);
  const distance = Math.hypot(place.x - p.x, place.y - p.y);
  return best !== undefined && best.distance <= distance ? best : { at: place, distance, edge, by: a.by };
}

function nearestOnLine(a: Point, b: Point, p: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  if (square === 0) return at(a);
  const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
  if (t <= 0) return at(a);
  if (t >= 1) return at(b);
  return { x: a.x + t * dx, y: a.y + t * dy };
}

function onCircle(center: Point, radius: number, p: Point): Point | undefined {
  const length = Math.hypot(p.x - center.x, p.y - center.y);
  if (length === 0) return undefined;
  const k = radius / length;
  return { x: center.x + (p.x - center.x) * k, y: center.y + (p.y - center.y) * k };
}

/** Whether a place on the arc's circle lies between its ends: on the bow's side of the chord. */
function besideArc(a: Vertex, b: Point, p: Point): boolean {
  const side = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  return a.bulge > 0 ? side <= 0 : side >= 0;
}

function gap(p: Point, a: Vertex, b: Point): number {
  const place = nearestOnEdge(a, b, p);
  return Math.hypot(place.x - p.x, place.y - p.y);
}

/** Gaps where neither place is an end: on the perpendicular from an arc's centre to the other edge. */
function feet(a: Vertex, b: Vertex, c: Vertex, d: Vertex): number[] {
  if (isFlat(a, b)) return [];
  const arc = arcOf(a, b);
  const towards = isFlat(c, d) ? nearestOnLine(c, d, arc.center) : arcOf(c, d).center;
  const length = Math.hypot(towards.x - arc.center.x, towards.y - arc.center.y);
  if (length === 0) return [gap(a, c, d)];
  const ux = ((towards.x - arc.center.x) / length) * arc.radius;
  const uy = ((towards.y - arc.center.y) / length) * arc.radius;
  return [1, -1]
    .map((k) => ({ x: arc.center.x + ux * k, y: arc.center.y + uy * k }))
    .filter((p) => besideArc(a, b, p))
    .map((p) => gap(p, c, d));
}

function edgesMeet(a: Vertex, b: Vertex, c: Vertex, d: Vertex): boolean {
  return crossings(a, b, c, d).some((p) => within(a, b, p) && within(c, d, p));
}

/** Where the endless lines or whole circles of two edges cross. */
function crossings(a: Vertex, b: Vertex, c: Vertex, d: Vertex): Point[] {
  const [flat, flatToo] = [isFlat(a, b), isFlat(c, d)];
  if (flat && flatToo) return lineWithLine(a, b, c, d);
  if (flat) return lineWithCircle(a, b, arcOf(c, d).center, arcOf(c, d).radius);
  if (flatToo) return lineWithCircle(c, d, arcOf(a, b).center, arcOf(a, b).radius);
  const one = arcOf(a, b);
  const other = arcOf(c, d);
  return circleWithCircle(one.center, one.radius, other.center, other.radius);
}

/** Whether a place on the edge's endless line or whole circle lies between its ends. */
function within(a: Vertex, b: Vertex, p: Point): boolean {
  if (!isFlat(a, b)) return besideArc(a, b, p);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const t = (p.x - a.x) * dx + (p.y - a.y) * dy;
  return t >= 0 && t <= dx * dx + dy * dy;
}

/** Whether some place of one lies inside the other, seen from a vertex of each loop; crossing edges are found apart. */
function overlap(one: Region, other: Region): boolean {
  return loopsOf(one).some((loop) => holds(other, loop[0])) || loopsOf(other).some((loop) => holds(one, loop[0]));
}

function holds(region: Region, p: Point | undefined): boolean {
  return p !== undefined && winding(region.outer, p) !== 0 && region.holes.every((hole) => winding(hole, p) === 0);
}

function loopsOf(region: Region): readonly Profile[] {
  return [region.outer, ...region.holes];
}

function edgesOf(region: Region): Edge[] {
  const edges: Edge[] = [];
  for (const loop of loopsOf(region)) {
    eachEdge(loop, (a, b) => {
      edges.push({ a, b, box: edgeBox(a, b) });
    });
  }
  return edges;
}

function edgeBox(a: Vertex, b: Vertex): Extents {
  return extentsOf([a, { ...b, bulge: 0 }]);
}

function gapOfBoxes(a: Extents, b: Extents): number {
  const dx = Math.max(0, a.min.x - b.max.x, b.min.x - a.max.x);
  const dy = Math.max(0, a.min.y - b.max.y, b.min.y - a.max.y);
  return Math.hypot(dx, dy);
}

function at(p: Point): Point {
  return { x: p.x, y: p.y };
}
