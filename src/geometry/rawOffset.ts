import { arcOf, directionAtEnd, directionAtStart, isFlat, shortWay, vectorLength } from "./arc.js";
import { circleWithCircle, lineWithCircle, lineWithLine } from "./meet.js";
import type { Path, Point, Profile, Vertex } from "./profile.js";
import { pushSegments, type Segment } from "./segment.js";
import { samePoint, tolerance } from "./tolerance.js";

/** How an offset goes round a corner that opens: by an arc about the corner, or by carrying both edges on till they meet. */
export type Corners = "round" | "sharp";

/**
 * The closed chain that a loop's offset is cut out of: where it runs round a place more than zero times is the offset.
 *
 * It counts for every place: once for the loop around it, once for each strip swept by an edge (added where it grows,
 * taken away where it shrinks), once for each pie about a corner that opens. The edges themselves cancel, so only the far
 * sides and the corners are written:
 *
 * 1. Each edge moved sideways, to the right by its distance. An arc that shrinks to nothing sweeps no farther than its
 *    centre: what lies beyond is swept by its neighbours.
 * 2. At a corner that opens, an arc about it: the pie. Sharp corners carry both edges on instead, up to four distances.
 * 3. At a corner that closes, in to the corner and out again: the strips overlap there, and both count.
 * 4. Where the distance changes, both edges are carried on or back till they meet; where they run on smoothly, or would
 *    meet too far away, a step across.
 *
 * Source: offsets by the sign of winding numbers, X. Chen and S. McMains, "Polygon Offsetting by Computing Winding
 * Numbers", ASME DETC 2005 (from memory); strips instead of inverted arcs, and unequal distances: own derivation.
 */
export function rawOffset(profile: Profile, distanceOf: (by: string) => number, corners: Corners): Segment[] {
  const loop = profile.filter((v, i) => hasLength(v, profile[(i + 1) % profile.length]!));
  const edges = loop.map((a, i) => moveEdge(a, loop[(i + 1) % loop.length]!, distanceOf(a.by)));
  return drawChain(edges, true, corners);
}

/** The same for an open chain, moved to the right where the distance is positive: the far sides and corners alone. */
export function rawOffsetOfPath(path: Path, distance: number): Segment[] {
  const kept = path.filter((v, i) => i === path.length - 1 || hasLength(v, path[i + 1]!));
  const edges = kept.slice(1).map((b, i) => moveEdge(kept[i]!, b, distance));
  return drawChain(edges, false, "round");
}

function drawChain(edges: readonly Moved[], closed: boolean, corners: Corners): Segment[] {
  const chain: Segment[] = [];
  edges.forEach((edge, i) => {
    const next = edges[i + 1] ?? (closed ? edges[0] : undefined);
    if (!edge.collapsed) pushSegments(chain, { ...edge.from, bulge: edge.bulge, by: edge.by }, edge.to, 0);
    if (next !== undefined) join(chain, edge, next, corners);
  });
  return chain;
}

/** An edge moved sideways. `from` and `to` are its moved ends; `at` is the corner where it ends. */
export type Moved = {
  readonly by: string;
  readonly distance: number;
  readonly bulge: number;
  readonly at: Point;
  readonly from: Point;
  readonly to: Point;
  readonly first: Point;
  readonly last: Point;
  readonly collapsed: boolean;
  readonly center: Point | undefined;
  readonly radius: number;
};

/** Whether an edge is more than noise; a whole turn is, though its ends are one place. */
function hasLength(a: Vertex, b: Point): boolean {
  return Math.abs(a.bulge) > 1 || !samePoint(a, b);
}

/** The edge from `a` to `b` moved to the right. */
export function moveEdge(a: Vertex, b: Point, distance: number): Moved {
  const first = directionAtStart(a, b);
  const last = directionAtEnd(a, b);
  const arc = isFlat(a, b) ? undefined : arcOf(a, b);
  const radius = arc === undefined ? 0 : arc.radius + Math.sign(a.bulge) * distance;
  const collapsed = arc !== undefined && radius <= tolerance.samePoint;
  const from = collapsed ? arc.center : beside(a, first, distance);
  const to = collapsed ? arc.center : beside(b, last, distance);
  const center = arc?.center;
  return {
    by: a.by,
    distance,
    bulge: arc === undefined ? 0 : a.bulge,
    at: b,
    from,
    to,
    first,
    last,
    collapsed,
    center,
    radius,
  };
}

/** Draws on from where it stands. */
class Pen {
  constructor(
    private readonly chain: Segment[],
    private at: Point,
  ) {}

  to(next: Point, by: string, bulge = 0): void {
    pushSegments(this.chain, { x: this.at.x, y: this.at.y, bulge, by }, next, 0);
    this.at = next;
  }
}

function join(chain: Segment[], one: Moved, two: Moved, corners: Corners): void {
  const pen = new Pen(chain, one.to);
  const by = joinedName(one.by, two.by);
  const turn = turnBetween(one, two);
  const smooth = Math.abs(turn) < tolerance.smooth;
  const opens = turn * one.distance > 0 && turn * two.distance > 0;
  const mitred = !smooth && (one.distance !== two.distance || (opens && corners === "sharp"));
  const meeting = mitred ? meetingOf(one, two, turn) : undefined;
  if (meeting !== undefined) {
    pen.to(meeting, one.by, bulgeOn(one, one.to, meeting));
    pen.to(two.from, two.by, bulgeOn(two, meeting, two.from));
    if (opens && (one.center ?? two.center) !== undefined) wholePie(chain, one, two, turn, by);
    return;
  }
  if (opens && !smooth) pie(pen, one, two, turn, by);
  else if (!smooth) pen.to(one.at, by);
  pen.to(two.from, by);
}

/** About the corner with the lesser of the two distances. */
function pie(pen: Pen, one: Moved, two: Moved, turn: number, by: string): void {
  const radius = Math.sign(turn) * Math.min(Math.abs(one.distance), Math.abs(two.distance));
  pen.to(beside(one.at, one.last, radius), by);
  pen.to(beside(one.at, two.first, radius), by, Math.tan(turn / 4));
}

/** The same as a loop of its own: an arc carried on curls away, and could leave less than both distances ask for. */
function wholePie(chain: Segment[], one: Moved, two: Moved, turn: number, by: string): void {
  const pen = new Pen(chain, one.at);
  pie(pen, one, two, turn, by);
  pen.to(one.at, by);
}

/** Signed turn at the corner. Doubling back is taken as opening: its pie can only cover what is swept anyway. */
function turnBetween(one: Moved, two: Moved): number {
  const cross = one.last.x * two.first.y - one.last.y * two.first.x;
  const dot = one.last.x * two.first.x + one.last.y * two.first.y;
  const turn = Math.atan2(cross, dot);
  return Math.PI - Math.abs(turn) < tolerance.smooth ? Math.PI * (one.distance < 0 ? -1 : 1) : turn;
}

const farthest = 4; // distances from the corner; beyond, a sharp corner would be a spike

/** Where the two moved edges meet, carried on or back; undefined where they do not near the corner. */
function meetingOf(one: Moved, two: Moved, turn: number): Point | undefined {
  if (one.collapsed || two.collapsed) return undefined;
  const reach = farthest * Math.max(Math.abs(one.distance), Math.abs(two.distance));
  const closes = one.distance * two.distance >= 0 && turn * (one.distance + two.distance) < 0;
  return meetings(one, two)
    .map((p) => ({ p, away: vectorLength(p.x - one.at.x, p.y - one.at.y) }))
    .filter(({ p, away }) => away <= reach && leavesEdges(one, two, p, closes))
    .sort((a, b) => a.away - b.away)[0]?.p;
}

/** Whether both edges still run onward when they end and start in `p`. At a corner that closes, one may be used up where
 *  the other is carried on over it: what the other sweeps there lies past the first one, where nothing is left to lose. */
function leavesEdges(one: Moved, two: Moved, p: Point, closes: boolean): boolean {
  const carriesOn = (p.x - one.to.x) * one.last.x + (p.y - one.to.y) * one.last.y >= 0;
  const carriesBack = (p.x - two.from.x) * two.first.x + (p.y - two.from.y) * two.first.y <= 0;
  const keepsStart = (p.x - one.from.x) * one.last.x + (p.y - one.from.y) * one.last.y >= 0;
  const keepsEnd = (two.to.x - p.x) * two.first.x + (two.to.y - p.y) * two.first.y >= 0;
  return (keepsStart || (closes && carriesBack)) && (keepsEnd || (closes && carriesOn));
}

/** Where the endless lines or whole circles of two moved edges cross, the first at its end, the second at its start. */
export function meetings(one: Moved, two: Moved): Point[] {
  const a = { x: one.to.x + one.last.x, y: one.to.y + one.last.y };
  const b = { x: two.from.x + two.first.x, y: two.from.y + two.first.y };
  if (one.center === undefined && two.center === undefined) return lineWithLine(one.to, a, two.from, b);
  if (one.center === undefined) return lineWithCircle(one.to, a, two.center!, two.radius);
  if (two.center === undefined) return lineWithCircle(two.from, b, one.center, one.radius);
  return circleWithCircle(one.center, one.radius, two.center, two.radius);
}

/** Bulge of the short way between two places on a moved edge's own curve. */
function bulgeOn(edge: Moved, a: Point, b: Point): number {
  return edge.center === undefined ? 0 : shortWay(edge.center, edge.radius, a, b);
}

/** What joins two edges bears both names, each once. */
export function joinedName(a: string, b: string): string {
  if (a === b) return a;
  if (!a.includes("|") && !b.includes("|")) return `${a}|${b}`;
  return [...new Set([...a.split("|"), ...b.split("|")])].join("|");
}

function beside(p: Point, direction: Point, distance: number): Point {
  return { x: p.x + direction.y * distance, y: p.y - direction.x * distance };
}
