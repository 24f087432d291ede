import { arcOf, bulgeOfSweep, directionAtEnd, directionAtStart, isFlat, shortWay, sweepOfBulge } from "./arc.js";
import { difference, union } from "./boolean.js";
import { type Corner, type Cornered, cornersOf, type Refused, type Sizes, sizeAt, type Which } from "./corner.js";
import { edgeLength } from "./measure.js";
import { type Moved, meetings, moveEdge } from "./movedEdge.js";
import type { Point, Profile, Vertex } from "./profile.js";
import { circle } from "./shapes.js";
import { samePoint, tolerance } from "./tolerance.js";

export type CornerOptions = { readonly corners?: Which };

/**
 * Rounds sharp corners with an arc that both edges run into smoothly, named "a|b" after them. Edges may be arcs.
 *
 * Units:    mm.
 * Returns:  the profile, and the corners whose edges are too short for the radius: those stay sharp. Where two corners
 *           want more of an edge than there is, both are refused.
 * Source:   the arc's centre lies that radius off both edges: where the two moved edges meet (textbook).
 */
export function fillet(profile: Profile, radiusAt: Sizes, options: CornerOptions = {}): Cornered {
  return cutCorners(profile, radiusAt, options.corners ?? "all", filletCut);
}

/** Cuts sharp corners off straight, `setback` along both edges, mm; the new edge is named "a|b". */
export function chamferCorners(profile: Profile, setback: Sizes, options: CornerOptions = {}): Cornered {
  return cutCorners(profile, setback, options.corners ?? "all", chamferCut);
}

/**
 * Makes room in corners for what seats in them: a round bite of the bit's radius that reaches into the corner itself.
 *
 * `diagonal`: the bit stops on the corner's bisector, its edge in the corner. `side`: it stops on the longer edge, a
 * radius from the corner; for square corners, where nothing may be taken from the other edge.
 * `which`: "inside" for a part's own hollow corners; "outside" for the loop of a hole, whose corners bite outwards.
 *
 * Returns: the profile, and the corners whose edges are shorter than the bite, or whose bite would fall through: those
 * stay sharp. Common practice, no source; the geometry computed.
 */
export function relieve(
  profile: Profile,
  bitRadius: number,
  kind: "diagonal" | "side",
  which: "inside" | "outside" = "inside",
): Cornered {
  let shape = profile;
  const refused: Refused[] = [];
  const corners = bitRadius > 0 ? cornersOf(profile, which) : [];
  for (const corner of corners) {
    const room = roomBeside(corner, profile.length, corners);
    const bite = kind === "diagonal" ? diagonalBite(corner, bitRadius, room) : sideBite(corner, bitRadius, room);
    const disc = { outer: circle(bite.center, bitRadius, corner.by), holes: [] };
    const region = { outer: shape, holes: [] };
    const [bitten, ...more] = which === "inside" ? difference(region, [disc]) : union([region, disc]);
    const whole = bitten !== undefined && more.length === 0 && bitten.holes.length === 0;
    if (whole && bite.fits) shape = bitten.outer;
    else refused.push(refusal(corner, bitRadius));
  }
  return { profile: shape, refused };
}

/** Length of the edge before and of the one after that a corner may use: half of one that ends in another such corner. */
type Room = { readonly before: number; readonly after: number };

function roomBeside({ index, before, at, after }: Corner, n: number, corners: readonly Corner[]): Room {
  const shared = (i: number) => (corners.some((corner) => corner.index === (i + n) % n) ? 2 : 1);
  return { before: edgeLength(before, at) / shared(index - 1), after: edgeLength(at, after) / shared(index + 1) };
}

type Bite = { readonly center: Point; readonly fits: boolean };

function diagonalBite({ before, at, after, turn }: Corner, radius: number, room: Room): Bite {
  const back = directionAtEnd(before, at);
  const on = directionAtStart(at, after);
  const length = Math.hypot(on.x - back.x, on.y - back.y);
  const center = {
    x: at.x + ((on.x - back.x) / length) * radius,
    y: at.y + ((on.y - back.y) / length) * radius,
  };
  const reach = 2 * radius * Math.sin(Math.abs(turn) / 2);
  return { center, fits: reach <= Math.min(room.before, room.after) + tolerance.touch };
}

function sideBite({ before, at, after }: Corner, radius: number, room: Room): Bite {
  const along = room.before > room.after ? negated(directionAtEnd(before, at)) : directionAtStart(at, after);
  const center = { x: at.x + along.x * radius, y: at.y + along.y * radius };
  return { center, fits: 2 * radius <= Math.max(room.before, room.after) + tolerance.touch };
}

/** A corner's new edge: where it leaves the edge before and where it joins the one after, 0 to 1 along each. */
type Cut = {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  readonly leave: number;
  readonly join: number;
};

function cutCorners(
  profile: Profile,
  sizes: Sizes,
  which: Which,
  cutOf: (corner: Corner, size: number) => Cut | undefined,
): Cornered {
  const n = profile.length;
  const wanted = cornersOf(profile, which).filter((corner) => sizeAt(sizes, corner) > 0);
  const cuts = new Map(wanted.map((corner) => [corner.index, cutOf(corner, sizeAt(sizes, corner))]));
  const crowded = (index: number, next: number) =>
    (cuts.get(index)?.join ?? 0) > (cuts.get(next)?.leave ?? 1) + tolerance.touch;
  const taken = wanted.filter(
    ({ index }) =>
      cuts.get(index) !== undefined && !crowded(index, (index + 1) % n) && !crowded((index + n - 1) % n, index),
  );
  const accepted = new Map(taken.map((corner) => [corner.index, { corner, cut: cuts.get(corner.index)! }]));
  const refused = wanted.filter(({ index }) => !accepted.has(index)).map((c) => refusal(c, sizeAt(sizes, c)));
  return { profile: withCuts(profile, accepted), refused };
}

function withCuts(profile: Profile, cuts: ReadonlyMap<number, { corner: Corner; cut: Cut }>): Profile {
  const made = profile.flatMap((v, i): Vertex[] => {
    const here = cuts.get(i);
    const next = cuts.get((i + 1) % profile.length);
    const share = (next?.cut.leave ?? 1) - (here?.cut.join ?? 0);
    const bulge = v.bulge === 0 || share === 1 ? v.bulge : bulgeOfSweep(sweepOfBulge(v.bulge) * share);
    if (here === undefined) return [{ ...v, bulge }];
    const { from, to } = here.cut;
    return [
      { ...from, bulge: here.cut.bulge, by: here.corner.by },
      { ...to, bulge, by: v.by },
    ];
  });
  return made.filter((v, i) => Math.abs(v.bulge) > 1 || !samePoint(v, made[(i + 1) % made.length]!));
}

function filletCut(corner: Corner, radius: number): Cut | undefined {
  const { before, at, after, turn } = corner;
  const inward = -Math.sign(turn) * radius;
  const one = moveEdge(before, at, inward);
  const two = moveEdge(at, after, inward);
  if (one.collapsed || two.collapsed) return undefined;
  return meetings(one, two)
    .map((center) => ({ center, away: Math.hypot(center.x - at.x, center.y - at.y) }))
    .sort((a, b) => a.away - b.away)
    .map(({ center }) => filletAbout(center, radius, before, at, after, one, two))
    .find((cut) => cut !== undefined);
}

function filletAbout(center: Point, radius: number, before: Vertex, at: Vertex, after: Vertex, one: Moved, two: Moved) {
  const from = footOn(before, at, one, center);
  const to = footOn(at, after, two, center);
  const [leave, join] = [shareAlong(before, at, from), shareAlong(at, after, to)];
  if (leave < -tolerance.touch || leave > 1 || join < 0 || join > 1 + tolerance.touch) return undefined;
  return { from, to, bulge: shortWay(center, radius, from, to), leave, join };
}

/** Where the moved edge's place `p` came from. */
function footOn(a: Vertex, b: Point, moved: Moved, p: Point): Point {
  if (moved.center === undefined) {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
    return { x: a.x + dx * t, y: a.y + dy * t };
  }
  const k = arcOf(a, b).radius / moved.radius;
  return { x: moved.center.x + (p.x - moved.center.x) * k, y: moved.center.y + (p.y - moved.center.y) * k };
}

/** How far along the edge a place on its endless curve lies, 0 at its start, 1 at its end. */
function shareAlong(a: Vertex, b: Point, p: Point): number {
  if (isFlat(a, b)) {
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    return ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
  }
  const { center, start, sweep } = arcOf(a, b);
  const off = Math.atan2(p.y - center.y, p.x - center.x) - (start + sweep / 2);
  return 0.5 + (off - 2 * Math.PI * Math.round(off / (2 * Math.PI))) / sweep;
}

function chamferCut({ before, at, after }: Corner, setback: number): Cut | undefined {
  const leave = 1 - setback / edgeLength(before, at);
  const join = setback / edgeLength(at, after);
  if (leave < 0 || join > 1) return undefined;
  return { from: placeAlong(before, at, leave), to: placeAlong(at, after, join), bulge: 0, leave, join };
}

function placeAlong(a: Vertex, b: Point, share: number): Point {
  if (isFlat(a, b)) return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  const { center, radius, start, sweep } = arcOf(a, b);
  const angle = start + sweep * share;
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

function refusal(corner: Corner, size: number): Refused {
  return { index: corner.index, at: { x: corner.at.x, y: corner.at.y }, by: corner.by, size };
}

function negated(p: Point): Point {
  return { x: -p.x, y: -p.y };
}
