import {
  areaPathsD,
  booleanOpD,
  ClipType,
  EndType,
  FillRule,
  inflatePathsD,
  JoinType,
  type PathD,
  type PathsD,
} from "clipper2-ts";
import { arcOf, midpoint } from "../../../src/geometry/arc.js";
import { nearestOn } from "../../../src/geometry/distance.js";
import { areaOf, areaOfRegion, eachEdge, lengthOf } from "../../../src/geometry/measure.js";
import type { Point, Profile, Region } from "../../../src/geometry/profile.js";
import { tessellate, tessellatePath } from "../../../src/geometry/tessellate.js";

/**
 * The second opinion: clipper2-ts on polygons whose chords stand off the arcs by no more than 1e-4 mm.
 *
 * A result agrees where its area differs by no more than 0.01 mm² + 1e-4 mm x perimeter (the longer of both), places sampled on either
 * boundary lie within 0.002 mm of the other, and there are as many loops. Loops that are thinner than 0.002 mm all along
 * are chord noise and not counted.
 */
export const oracle = { chord: 1e-4, digits: 5, area: 0.01, areaPerLength: 1e-4, away: 0.002, thin: 0.002 } as const;

function polygonsOf(region: Region, chord: number): PathsD {
  const wound = (loop: Profile, left: boolean): PathD => {
    const points = chord > oracle.chord ? evenPolygon(loop, chord) : tessellate(loop, chord);
    return areaOf(loop) > 0 === left ? points : points.reverse();
  };
  return [wound(region.outer, true), ...region.holes.map((hole) => wound(hole, false))];
}

/** Chords whose inner corners stand out by a third of a sagitta, so that they hold as much area as the arcs. With coarse
 *  chords the area would else be out by more than the proof allows. */
function evenPolygon(loop: Profile, chord: number): Point[] {
  const points: Point[] = [];
  eachEdge(loop, (a, b) => {
    const [first, ...inner] = tessellatePath([a, { ...b, bulge: 0 }], chord).slice(0, -1);
    points.push(first!);
    if (inner.length === 0) return;
    const { center, sweep } = arcOf(a, b);
    const step = Math.abs(sweep) / (inner.length + 1);
    // the fan of chords from a, over the inner corners k times as far out, to b:  2 k + (n - 2) k^2 = n step / sin step
    const wanted = ((inner.length + 1) * step) / Math.sin(step);
    const many = inner.length - 1;
    const k = many === 0 ? wanted / 2 : (Math.sqrt(1 + many * wanted) - 1) / many;
    for (const p of inner) points.push({ x: center.x + (p.x - center.x) * k, y: center.y + (p.y - center.y) * k });
  });
  return points;
}

export function oracleOffset(region: Region, distance: number, join: "round" | "sharp", chord: number): PathsD {
  const kind = join === "round" ? JoinType.Round : JoinType.Miter;
  return inflatePathsD(
    polygonsOf(region, chord),
    distance,
    kind,
    EndType.Polygon,
    4,
    oracle.digits,
    Math.min(chord, oracle.chord),
  );
}

export function oracleBoolean(
  kind: "union" | "difference" | "intersection",
  a: Region,
  b: Region,
  chord: number,
): PathsD {
  const type = { union: ClipType.Union, difference: ClipType.Difference, intersection: ClipType.Intersection }[kind];
  return booleanOpD(type, polygonsOf(a, chord), polygonsOf(b, chord), FillRule.Positive, oracle.digits);
}

/** The oracle's answer at a chord. */
export type Ask = (chord: number) => PathsD;

/**
 * What is wrong with a result, in words; undefined where it agrees. `first` is the chord of the first question: a coarser
 * one is quicker, and what agrees with it within the same limits needs no finer one. Where two arcs all but touch, even
 * 1e-4 moves their crossing by more than 0.002 mm: a boundary that strays is asked for once more at 1e-5, and at 1e-6.
 */
export function disagreement(regions: readonly Region[], ask: Ask, first: number): string | undefined {
  const doubled = doubledEdge(regions);
  if (doubled !== undefined) return doubled;
  let fault: string | undefined;
  for (const chord of [first, oracle.chord, oracle.chord / 10, oracle.chord / 100]) {
    if (chord < oracle.chord && !fault?.startsWith("boundary")) return fault;
    fault = compare(regions, ask(chord), chord);
    if (fault === undefined) return undefined;
  }
  return fault;
}

/** An outline that runs along itself, there and back, is a blade or slit without width. */
function doubledEdge(regions: readonly Region[]): string | undefined {
  const seen = new Set<string>();
  const nanometres = (v: number) => Math.round(v * 1e6);
  for (const loop of regions.flatMap((region) => [region.outer, ...region.holes])) {
    for (let i = 0; i < loop.length; i++) {
      const a = loop[i]!;
      const b = loop[(i + 1) % loop.length]!;
      const m = midpoint(a, b);
      const key = [m.x, m.y, a.x + b.x, a.y + b.y].map(nanometres).join(" ");
      if (seen.has(key)) return `an edge is run along twice at ${m.x}, ${m.y}`;
      seen.add(key);
    }
  }
  return undefined;
}

function compare(regions: readonly Region[], polygons: PathsD, chord: number): string | undefined {
  const loops = regions.flatMap((region) => [region.outer, ...region.holes]);
  const area = regions.reduce((sum, region) => sum + areaOfRegion(region), 0);
  const perimeter = Math.max(
    loops.reduce((sum, loop) => sum + lengthOf(loop), 0),
    polygons.reduce((sum, path) => sum + lengthOfPolygon(path), 0),
  );
  const off = Math.abs(area - areaPathsD(polygons));
  if (off > oracle.area + oracle.areaPerLength * perimeter) return `area off by ${off}`;
  const thick = loops.filter((loop) => Math.abs(areaOf(loop)) > (oracle.thin * lengthOf(loop)) / 2);
  const counted = real(polygons).length;
  if (thick.length !== counted && !sameLoopsAside(regions, polygons, chord)) {
    return `${thick.length} loops instead of ${counted}`;
  }
  const strayed = farthest(loops, polygons, chord);
  return strayed > oracle.away ? `boundary strays by ${strayed}` : undefined;
}

/** Loops that are more than chord noise. */
function real(paths: PathsD): PathsD {
  return paths.filter((path) => Math.abs(areaPathsD([path])) > (oracle.thin * lengthOfPolygon(path)) / 2);
}

function lengthOfPolygon(path: PathD): number {
  return path.reduce((sum, p, i) => {
    const q = path[(i + 1) % path.length]!;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
}

/** Where loops touch, their number hangs on nothing: both answers made a hair smaller, so that all touches part, or a hair
 *  larger, so that all close, must then have as many loops. */
function sameLoopsAside(regions: readonly Region[], polygons: PathsD, chord: number): boolean {
  const mine = regions.flatMap((region) => polygonsOf(region, chord));
  const loops = (paths: PathsD, by: number) =>
    real(inflatePathsD(paths, by, JoinType.Miter, EndType.Polygon, 4, oracle.digits)).length;
  return [-oracle.thin, oracle.thin].some((by) => loops(mine, by) === loops(polygons, by));
}

function farthest(loops: readonly Profile[], polygons: PathsD, chord: number): number {
  if (loops.length === 0 || polygons.length === 0) return 0;
  let most = 0;
  for (const p of loops.flatMap((loop) => sampled(tessellate(loop, 0.05), 25))) {
    const away = awayFromPolygons(polygons, p);
    if (
      away > oracle.away &&
      !inSlit(
        loops.map((loop) => tessellate(loop, chord)),
        p,
      )
    )
      most = Math.max(most, away);
  }
  // what is no thicker than two chords may be what two polygons of one arc differ by
  const wide = polygons.filter((path) => Math.abs(areaPathsD([path])) > chord * lengthOfPolygon(path));
  for (const p of wide.flatMap((path) => sampled(path, 25))) {
    const away = awayFromLoops(loops, p);
    if (away > oracle.away && !inSlit(polygons, p)) most = Math.max(most, away);
  }
  return most;
}

function sampled(points: readonly Point[], most: number): Point[] {
  const stride = Math.max(1, Math.floor(points.length / most));
  return points.filter((_, i) => i % stride === 0);
}

function awayFromLoops(loops: readonly Profile[], p: Point): number {
  return loops.reduce(
    (least, loop) => Math.min(least, nearestOn(loop, p)?.distance ?? least),
    Number.POSITIVE_INFINITY,
  );
}

function awayFromPolygons(polygons: PathsD, p: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const path of polygons) {
    for (let i = 0; i < path.length; i++) {
      const a = path[i]!;
      const b = path[i + 1 === path.length ? 0 : i + 1]!;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const square = dx * dx + dy * dy;
      const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
      const ex = a.x + dx * t - p.x;
      const ey = a.y + dy * t - p.y;
      least = Math.min(least, ex * ex + ey * ey);
    }
  }
  return Math.sqrt(least);
}

/** Whether a place on a boundary is only the wall of a slit or blade thinner than chord noise, as rounding leaves along a
 *  flush seam, or as the tip of a cusp: a circle around it, as large as counts, lies all inside or all outside but for
 *  where it crosses the slit itself, once each way. */
function inSlit(polygons: PathsD, p: Point): boolean {
  const ways = 16;
  const inside = Array.from({ length: ways }, (_, k) => {
    const angle = ((k + 0.3) * 2 * Math.PI) / ways;
    return insidePolygons(polygons, p.x + oracle.thin * Math.cos(angle), p.y + oracle.thin * Math.sin(angle));
  }).filter(Boolean).length;
  return inside <= 2 || inside >= ways - 2;
}

function insidePolygons(polygons: PathsD, x: number, y: number): boolean {
  let inside = false;
  for (const path of polygons) {
    path.forEach((a, i) => {
      const b = path[i + 1 === path.length ? 0 : i + 1]!;
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    });
  }
  return inside;
}
