import { arcOf, midpoint } from "../../geometry/arc.js";
import type { Point, Profile, Vertex } from "../../geometry/profile.js";

/** A place that must be marked out, and along which axes it is not already given by a straight edge. */
export type CornerPoint = { readonly at: Point; readonly x: boolean; readonly y: boolean };

/** A rounded corner: its arc joins two straight edges smoothly, so that one marks out the sharp corner instead. */
export type Rounding = { readonly middle: Point; readonly center: Point; readonly radius: number };

type Edge = { readonly from: Vertex; readonly to: Vertex };

const parallel = 1e-6;

/**
 * The places that fix an outline of lines and arcs: an upright edge by its x, a level one by its y, a slanting one by
 * both ends, a bowed one by both ends too. A rounded corner counts as the sharp one.
 */
export function cornerPoints(profile: Profile): readonly CornerPoint[] {
  const edges = edgesOf(profile);
  return edges.flatMap((edge, i) => {
    if (roundingAt(edges, i)) return [];
    const ends = [sharpEnd(edges, i, -1), sharpEnd(edges, i, 1)];
    const bowed = edge.from.bulge !== 0;
    const upright = !bowed && Math.abs(edge.to.x - edge.from.x) < parallel;
    const level = !bowed && Math.abs(edge.to.y - edge.from.y) < parallel;
    return ends.map((at) => ({ at, x: !level, y: !upright }));
  });
}

/** Every rounded corner of an outline. */
export function roundingsOf(profile: Profile): readonly Rounding[] {
  const edges = edgesOf(profile);
  return edges.flatMap((_, i) => roundingAt(edges, i) ?? []);
}

function edgesOf(profile: Profile): readonly Edge[] {
  return profile.map((from, i) => ({ from, to: profile[(i + 1) % profile.length]! }));
}

function roundingAt(edges: readonly Edge[], index: number): Rounding | undefined {
  const edge = edges[index]!;
  if (edge.from.bulge === 0 || Math.abs(edge.from.bulge) >= 1) return undefined;
  const [before, after] = [neighbour(edges, index, -1), neighbour(edges, index, 1)];
  if (before.from.bulge !== 0 || after.from.bulge !== 0) return undefined;
  const { center, radius } = arcOf(edge.from, edge.to);
  if (!square(before, edge.from, center) || !square(after, edge.to, center)) return undefined;
  return { middle: midpoint(edge.from, edge.to), center, radius };
}

/** The straight edge runs square to the radius that meets it. */
function square({ from, to }: Edge, end: Point, center: Point): boolean {
  const along = { x: to.x - from.x, y: to.y - from.y };
  const radius = { x: end.x - center.x, y: end.y - center.y };
  const cos =
    (along.x * radius.x + along.y * radius.y) / (Math.hypot(along.x, along.y) * Math.hypot(radius.x, radius.y));
  return Math.abs(cos) < 1e-4;
}

/** An edge's end, or where it would meet the edge beyond the rounded corner that follows it. */
function sharpEnd(edges: readonly Edge[], index: number, way: -1 | 1): Point {
  const edge = edges[index]!;
  const end = way === 1 ? edge.to : edge.from;
  const next = (index + way + edges.length) % edges.length;
  if (edge.from.bulge !== 0 || !roundingAt(edges, next)) return end;
  return meetingOf(edge, neighbour(edges, next, way)) ?? end;
}

function neighbour(edges: readonly Edge[], index: number, way: -1 | 1): Edge {
  return edges[(index + way + edges.length) % edges.length]!;
}

/** Where two straight edges would meet, carried on; none for parallel ones. */
export function meetingOf(a: Edge, b: Edge): Point | undefined {
  const u = { x: a.to.x - a.from.x, y: a.to.y - a.from.y };
  const v = { x: b.to.x - b.from.x, y: b.to.y - b.from.y };
  const turn = u.x * v.y - u.y * v.x;
  if (Math.abs(turn) < parallel * Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y)) return undefined;
  const t = ((b.from.x - a.from.x) * v.y - (b.from.y - a.from.y) * v.x) / turn;
  return { x: a.from.x + t * u.x, y: a.from.y + t * u.y };
}
