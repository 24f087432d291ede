import { areaPathsD, booleanOpD, ClipType, EndType, FillRule, inflatePathsD, JoinType, type PathsD } from "clipper2-ts";
import { arcOf, isFlat } from "./arc.js";
import { turnAt } from "./corner.js";
import { areaOf, eachEdge, lengthOf } from "./measure.js";
import type { Distances } from "./offset.js";
import type { Point, Profile, Region } from "./profile.js";
import type { Corners } from "./rawOffset.js";
import { chordsOf } from "./tessellate.js";
import { tolerance } from "./tolerance.js";

/** What clipper2-ts says about the same question, asked of polygons: its area lies between two values, mm². */
export type Answer = {
  readonly least: number;
  readonly most: number;
  /** How far the true area may lie outside, mm². */
  readonly allowed: number;
  readonly polygons: PathsD;
};

const digits = 4; // clipper2-ts counts in ten-thousandths of a millimetre

export function polygonBoolean(
  kind: "union" | "difference" | "intersection",
  as: readonly Region[],
  bs: readonly Region[],
  chord: number = tolerance.guardChord,
): Answer {
  const pathsOf = (region: Region) => pathsAt(region, chord);
  const subject = as.flatMap(pathsOf);
  // each side is made simple first, so that overlapping regions of one side count once
  const clip =
    bs.length > 1
      ? booleanOpD(ClipType.Union, bs.flatMap(pathsOf), null, FillRule.Positive, digits)
      : bs.flatMap(pathsOf);
  const polygons = booleanOpD(typeOf(kind), subject, clip, FillRule.Positive, digits);
  const area = areaPathsD(polygons);
  return { least: area, most: area, allowed: allowance([...as, ...bs], 0, chord), polygons };
}

export function polygonOffset(
  region: Region,
  distance: Distances,
  corners: Corners,
  chord: number = tolerance.guardChord,
): Answer {
  const inflate = (by: number, at: Corners) => inflated(region, by, at, chord);
  const names = [region.outer, ...region.holes]
    .flat()
    .map((v) => (typeof distance === "number" ? distance : distance(v.by)));
  const lesser = names.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const greater = names.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const equal = lesser === greater;
  // a corner between two distances is a mitre whatever the others are, and takes more than a round one either way
  const polygons = inflate(greater, equal ? corners : greater < 0 ? "round" : "sharp");
  const most = areaPathsD(polygons);
  const least = equal ? most : areaPathsD(inflate(lesser, lesser < 0 ? "sharp" : "round"));
  const allowed = allowance(
    [region],
    Math.max(Math.abs(lesser), Math.abs(greater)),
    chord,
    !equal || corners === "sharp",
  );
  return { least, most, allowed, polygons };
}

/** Where a result and the polygon answer differ most. */
export function differenceAt(answer: Answer, regions: readonly Region[]): Point {
  const apart = booleanOpD(
    ClipType.Xor,
    regions.flatMap((region) => pathsAt(region, tolerance.guardChord)),
    answer.polygons,
    FillRule.NonZero,
    digits,
  );
  const widest = apart.reduce<PathsD[number]>(
    (a, b) => (Math.abs(areaPathsD([b])) > Math.abs(areaPathsD([a])) ? b : a),
    [],
  );
  const sum = widest.reduce((s, p) => ({ x: s.x + p.x, y: s.y + p.y }), { x: 0, y: 0 });
  return { x: sum.x / Math.max(1, widest.length), y: sum.y / Math.max(1, widest.length) };
}

function typeOf(kind: "union" | "difference" | "intersection"): ClipType {
  if (kind === "union") return ClipType.Union;
  return kind === "difference" ? ClipType.Difference : ClipType.Intersection;
}

function inflated(region: Region, distance: number, corners: Corners, chord: number): PathsD {
  const join = corners === "round" ? JoinType.Round : JoinType.Miter;
  return inflatePathsD(pathsAt(region, chord), distance, join, EndType.Polygon, 4, digits, chord / 5);
}

/** Outer counter-clockwise, holes clockwise, arcs as chords. */
function pathsAt(region: Region, chord: number): PathsD {
  const wound = (loop: Profile, left: boolean) =>
    areaOf(loop) > 0 === left ? evenPolygon(loop, chord) : evenPolygon(loop, chord).reverse();
  return [wound(region.outer, true), ...region.holes.map((hole) => wound(hole, false))];
}

/** Chords with as much area as the arcs: the inner corners are moved out a little, so that what the chords lose is made
 *  good, and only where something cuts an arc short does an error remain. */
function evenPolygon(profile: Profile, chord: number): Point[] {
  const points: Point[] = [];
  eachEdge(profile, (a, b) => {
    points.push({ x: a.x, y: a.y });
    if (isFlat(a, b)) return;
    const { center, radius, start, sweep } = arcOf(a, b);
    const n = Math.max(2, chordsOf(radius, sweep, chord));
    const step = Math.abs(sweep) / n;
    const out = evenRadius(n, step) * radius;
    for (let i = 1; i < n; i++) {
      const angle = start + (sweep * i) / n;
      points.push({ x: center.x + out * Math.cos(angle), y: center.y + out * Math.sin(angle) });
    }
  });
  return points;
}

/** Radius of the inner corners, as a share of the arc's, that gives n chords the sector's area; both ends stay on the
 *  arc. Twice the area of the fan: 2 k sin + (n - 2) k² sin = n step. */
function evenRadius(n: number, step: number): number {
  const wanted = (n * step) / Math.sin(step);
  if (n === 2) return wanted / 2;
  return (Math.sqrt(1 + (n - 2) * wanted) - 1) / (n - 2);
}

/** What the chords and the polygon library's rounding can lose: a chord's bow wherever an arc may be cut, and, for an
 *  offset, the perimeter that bows add, the chords of round corners, the tips of spikes, which are cut differently, and of
 *  corners to which arcs are carried on, where the polygon's last chords go straight on. */
function allowance(regions: readonly Region[], distance: number, chord: number, carriedOn = false): number {
  const reach = Math.abs(distance);
  let sum = 0.01;
  for (const loop of regions.flatMap((region) => [region.outer, ...region.holes])) {
    sum += 1e-4 * lengthOf(loop);
    eachEdge(loop, (a, b, i) => {
      const before = loop[(i + loop.length - 1) % loop.length]!;
      const turn = Math.abs(turnAt(before, a, b));
      const curved = carriedOn && (a.bulge !== 0 || before.bulge !== 0);
      sum += (chord / 5) * reach * turn + (turn > spike || curved ? 4 * reach * reach * Math.min(1, turn) : 0);
      if (isFlat(a, b)) return;
      const { radius, sweep } = arcOf(a, b);
      sum += 2 * chord * Math.sqrt(8 * radius * chord);
      sum += chord * reach * Math.abs(sweep);
      if (carriedOn) sum += (chord / radius) * reach * reach * Math.abs(sweep); // a mitre at each chord's end
    });
  }
  return sum;
}

const spike = 2 * Math.acos(1 / 4) - 0.01; // rad: beyond this turn a mitre is longer than four distances
