import { shortWay, vectorLength } from "./arc.js";
import { beside, carriesBothOn, type Moved, meetings, moveEdge } from "./movedEdge.js";
import type { Path, Point, Profile, Vertex } from "./profile.js";
import { pushSegments, type Segment } from "./segment.js";
import { samePoint, tolerance } from "./tolerance.js";
import { sharpWhereUsedUp } from "./usedUp.js";

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
 *    centre: what lies beyond is swept by its neighbours, which meet in its stead where their distances differ (usedUp.ts).
 * 2. At a corner that opens, an arc about it: the pie. Sharp corners, and those between two distances, carry both edges
 *    on instead, up to four distances. Where that would cut one of them back there is the pie of the lesser distance and a
 *    step to the greater: nothing is left nearer to an edge than its distance.
 * 3. At a corner that closes, in to the corner and out again: the strips overlap there, and both count. Where the
 *    distance changes there, what the one that is carried on sweeps till it meets the other is counted besides.
 * 4. Between an edge that grows and one that shrinks, both are carried on or cut back till they meet.
 * 5. Where the distance changes along a smooth run, or edges would meet too far away, a step across.
 *
 * Source: offsets by the sign of winding numbers, X. Chen and S. McMains, "Polygon Offsetting by Computing Winding
 * Numbers", ASME DETC 2005 (from memory); strips instead of inverted arcs, and unequal distances: own derivation.
 */
export function rawOffset(profile: Profile, distanceOf: (by: string) => number, corners: Corners): Segment[] {
  const loop = profile.filter((v, i) => hasLength(v, profile[(i + 1) % profile.length]!));
  const kept = sharpWhereUsedUp(loop.map((at) => ({ at, distance: distanceOf(at.by) })));
  const edges = kept.map(({ at, distance }, i) => moveEdge(at, kept[(i + 1) % kept.length]!.at, distance));
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

/** Whether an edge is more than noise; a whole turn is, though its ends are one place. */
function hasLength(a: Vertex, b: Point): boolean {
  return Math.abs(a.bulge) > 1 || !samePoint(a, b);
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
  const equal = one.distance === two.distance;
  const mixed = one.distance * two.distance < 0;
  const opens = !smooth && !mixed && turn * (one.distance + two.distance) > 0;
  const closes = !smooth && !mixed && !opens;
  const meeting = mitreOf(one, two, { smooth, mixed, sharp: opens && (!equal || corners === "sharp") });
  if (meeting !== undefined) {
    pen.to(meeting, one.by, bulgeOn(one, one.to, meeting));
    pen.to(two.from, two.by, bulgeOn(two, meeting, two.from));
    if (opens && (one.center ?? two.center) !== undefined) wholePie(chain, one, two, turn, by);
    return;
  }
  if (opens) pie(pen, one, two, turn, by);
  else if (!smooth) pen.to(one.at, by);
  pen.to(two.from, by);
  if (closes && !equal) carryOver(chain, one, two, by);
}

type CornerKind = { readonly smooth: boolean; readonly mixed: boolean; readonly sharp: boolean };

/** Where the moved edges meet in place of an arc or a step. */
function mitreOf(one: Moved, two: Moved, { smooth, mixed, sharp }: CornerKind): Point | undefined {
  if (smooth) return undefined;
  if (mixed) return meetingOf(one, two, runsOnward);
  return sharp ? meetingOf(one, two, carriesBothOn) : undefined;
}

/** At a corner that closes between two distances: what the edge that is carried on sweeps before it meets the other one,
 *  each a loop of its own. Never cut back here: edges cut back from both ends may run backwards, and twice turned inside
 *  out a shape that is eaten up would look whole. */
function carryOver(chain: Segment[], one: Moved, two: Moved, by: string): void {
  const meeting = meetingOf(one, two, () => true);
  if (meeting === undefined) return;
  if ((meeting.x - one.to.x) * one.last.x + (meeting.y - one.to.y) * one.last.y > 0) {
    const pen = new Pen(chain, one.at);
    pen.to(one.to, by);
    pen.to(meeting, one.by, bulgeOn(one, one.to, meeting));
    pen.to(one.at, by);
  }
  if ((meeting.x - two.from.x) * two.first.x + (meeting.y - two.from.y) * two.first.y < 0) {
    const pen = new Pen(chain, one.at);
    pen.to(meeting, by);
    pen.to(two.from, two.by, bulgeOn(two, meeting, two.from));
    pen.to(one.at, by);
  }
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
function meetingOf(one: Moved, two: Moved, fits: (one: Moved, two: Moved, p: Point) => boolean): Point | undefined {
  if (one.collapsed || two.collapsed) return undefined;
  const reach = farthest * Math.max(Math.abs(one.distance), Math.abs(two.distance));
  return meetings(one, two)
    .map((p) => ({ p, away: vectorLength(p.x - one.at.x, p.y - one.at.y) }))
    .filter(({ p, away }) => away <= reach && fits(one, two, p))
    .sort((a, b) => a.away - b.away)[0]?.p;
}

/** Whether both edges still run onward when they end and start in `p`; carrying them on is always well. */
function runsOnward(one: Moved, two: Moved, p: Point): boolean {
  const keepsStart = (p.x - one.from.x) * one.last.x + (p.y - one.from.y) * one.last.y >= 0;
  return keepsStart && (two.to.x - p.x) * two.first.x + (two.to.y - p.y) * two.first.y >= 0;
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
