import { arcOf, midpoint } from "./arc.js";
import { nearestOn } from "./distance.js";
import { areaOf, areaOfRegion, centroidOf, eachEdge, isCircle } from "./measure.js";
import type { Point, Profile, Region, Vertex } from "./profile.js";
import { mergeRuns } from "./tidy.js";
import { samePoint, tolerance } from "./tolerance.js";
import { mirrorRegion, moveRegion, turnRegion } from "./transform.js";

/** How one region is laid on another: seen in a mirror first (x becomes -x) or not, turned about the origin, moved. */
export type Congruence = { readonly mirrored: boolean; readonly turn: number; readonly move: Point };

/**
 * Whether `b` is `a`, turned, moved, and if need be seen in a mirror. Names are not compared, nor where a loop starts or
 * how its edges are cut up.
 *
 * Units:    `within`, mm, is how far two parts may differ and still be one to the workshop.
 * Returns:  without a mirror if that will do, with the least turn that will do; undefined where they are two shapes.
 *
 * 1. Equal areas and numbers of loops.
 * 2. Both with their centres in the origin. The mark of `a` that lies farthest out (a corner, or the centre of a round
 *    loop) can only fall on a mark of `b` that lies as far out: each is one turn to try.
 * 3. A turn is right where every loop of one lies on a loop of the other, both ways round.
 */
export function congruence(a: Region, b: Region, within: number = tolerance.contact): Congruence | undefined {
  if (a.holes.length !== b.holes.length) return undefined;
  if (Math.abs(areaOfRegion(a) - areaOfRegion(b)) > within * Math.sqrt(areaOfRegion(a)) * 4) return undefined;
  const target = centred(plainRegion(b));
  for (const mirrored of [false, true]) {
    const source = centred(plainRegion(mirrored ? mirrorRegion(a) : a));
    const turn = turnsToTry(source.region, target.region, within).find((angle) =>
      liesOn(turnRegion(source.region, angle), target.region, within),
    );
    if (turn !== undefined) return { mirrored, turn, move: moveFor(source.center, target.center, turn) };
  }
  return undefined;
}

function moveFor(from: Point, to: Point, turn: number): Point {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return { x: to.x - (from.x * c - from.y * s), y: to.y - (from.x * s + from.y * c) };
}

function centred(region: Region): { region: Region; center: Point } {
  const center = centroidOf(region);
  return { region: moveRegion(region, -center.x, -center.y), center };
}

function plainRegion(region: Region): Region {
  // names would keep apart what is one edge
  const plain = (loop: Profile) => mergeRuns(loop.map((v) => ({ ...v, by: "" })));
  return { outer: plain(region.outer), holes: region.holes.map(plain) };
}

/** A corner, or the centre of a round loop with its radius. */
type Mark = { readonly away: number; readonly angle: number; readonly radius: number };

function turnsToTry(a: Region, b: Region, within: number): number[] {
  const farthest = marksOf(a).reduce<Mark | undefined>(
    (best, mark) => (best === undefined || mark.away > best.away ? mark : best),
    undefined,
  );
  if (farthest === undefined || farthest.away <= within) return [0];
  return marksOf(b)
    .filter((m) => Math.abs(m.away - farthest.away) <= 2 * within && Math.abs(m.radius - farthest.radius) <= within)
    .map((m) => Math.atan2(Math.sin(m.angle - farthest.angle), Math.cos(m.angle - farthest.angle)))
    .sort((one, other) => Math.abs(one) - Math.abs(other));
}

function marksOf(region: Region): Mark[] {
  return [region.outer, ...region.holes].flatMap((loop) => {
    const round = isCircle(loop);
    if (round !== undefined) return [markAt(round.center, round.radius)];
    return loop.filter((v, i) => isRealCorner(loop, v, i)).map((v) => markAt(v, 0));
  });
}

function markAt(p: Point, radius: number): Mark {
  return { away: Math.hypot(p.x, p.y), angle: Math.atan2(p.y, p.x), radius };
}

/** Not the seam within an arc of more than half a turn, which may lie anywhere. */
function isRealCorner(loop: Profile, v: Vertex, i: number): boolean {
  const before = loop[(i + loop.length - 1) % loop.length]!;
  if (v.bulge * before.bulge <= 0) return true;
  const one = arcOf(before, v);
  const two = arcOf(v, loop[(i + 1) % loop.length]!);
  return !samePoint(one.center, two.center);
}

function liesOn(a: Region, b: Region, within: number): boolean {
  return (
    loopLiesOn(a.outer, b.outer, within) && a.holes.every((hole) => b.holes.some((h) => loopLiesOn(hole, h, within)))
  );
}

function loopLiesOn(a: Profile, b: Profile, within: number): boolean {
  if (Math.abs(Math.abs(areaOf(a)) - Math.abs(areaOf(b))) > within * 4 * Math.sqrt(Math.abs(areaOf(a)))) return false;
  return [...placesOf(a)].every((p) => near(b, p, within)) && [...placesOf(b)].every((p) => near(a, p, within));
}

function near(loop: Profile, p: Point, within: number): boolean {
  return (nearestOn(loop, p)?.distance ?? Number.POSITIVE_INFINITY) <= within;
}

function placesOf(loop: Profile): Point[] {
  const places: Point[] = [];
  eachEdge(loop, (a, b) => places.push(a, midpoint(a, b)));
  return places;
}
