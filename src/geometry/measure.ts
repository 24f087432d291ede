import { arcOf, isFlat, midpoint, radiusOf, sweepOfBulge } from "./arc.js";
import type { Extents, Path, Point, Profile, Region, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/** Area, mm²; negative where the loop runs clockwise. Summed from the first vertex, so that far places lose nothing. */
export function areaOf(profile: Profile): number {
  const o = profile[0];
  if (o === undefined) return 0;
  let sum = 0;
  eachEdge(profile, (a, b) => {
    sum += ((a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)) / 2 + bowArea(a, b);
  });
  return sum;
}

/** Area of the outer less its holes, mm². */
export function areaOfRegion(region: Region): number {
  return region.holes.reduce((left, hole) => left - Math.abs(areaOf(hole)), Math.abs(areaOf(region.outer)));
}

/** Length all the way round, mm. */
export function lengthOf(profile: Profile): number {
  let sum = 0;
  eachEdge(profile, (a, b) => {
    sum += edgeLength(a, b);
  });
  return sum;
}

/** Length of an open chain, mm. */
export function lengthOfPath(path: Path): number {
  return path.slice(1).reduce((sum, b, i) => sum + edgeLength(path[i]!, b), 0);
}

/** Length of the edge that leaves `a` and ends in `b`, mm. */
export function edgeLength(a: Vertex, b: Point): number {
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  if (a.bulge === 0) return chord;
  return radiusOf(chord, a.bulge) * Math.abs(sweepOfBulge(a.bulge));
}

/** The smallest axis-parallel rectangle around it. Arcs count by their bow, not by their ends. */
export function extentsOf(shape: Profile | Region): Extents {
  const profile = "outer" in shape ? shape.outer : shape;
  const box = {
    x0: Number.POSITIVE_INFINITY,
    y0: Number.POSITIVE_INFINITY,
    x1: Number.NEGATIVE_INFINITY,
    y1: Number.NEGATIVE_INFINITY,
  };
  const grow = (x: number, y: number) => {
    if (x < box.x0) box.x0 = x;
    if (x > box.x1) box.x1 = x;
    if (y < box.y0) box.y0 = y;
    if (y > box.y1) box.y1 = y;
  };
  eachEdge(profile, (a, b) => {
    grow(a.x, a.y);
    for (const p of quadrantsOf(a, b)) grow(p.x, p.y);
  });
  return { min: { x: box.x0, y: box.y0 }, max: { x: box.x1, y: box.y1 } };
}

/** The centre of the area. Of a loop without area, the middle of its extents. */
export function centroidOf(shape: Profile | Region): Point {
  const loops = "outer" in shape ? [shape.outer, ...shape.holes] : [shape];
  const o = loops[0]![0] ?? { x: 0, y: 0 };
  let area = 0;
  let mx = 0;
  let my = 0;
  loops.forEach((loop, i) => {
    const moment = momentOf(loop, o);
    const sign = (i === 0 ? 1 : -1) * Math.sign(moment.area);
    area += sign * moment.area;
    mx += sign * moment.x;
    my += sign * moment.y;
  });
  if (Math.abs(area) > tolerance.samePoint ** 2) return { x: o.x + mx / area, y: o.y + my / area };
  const box = extentsOf(loops[0]!);
  return { x: (box.min.x + box.max.x) / 2, y: (box.min.y + box.max.y) / 2 };
}

/** Centre and radius where the profile is one whole circle, however many arcs it is cut into. */
export function isCircle(profile: Profile): { readonly center: Point; readonly radius: number } | undefined {
  const first = profile[0];
  if (first === undefined || profile.length < 2 || profile.some((v) => !(v.bulge > 0))) return undefined;
  const arcs = profile.map((a, i) => arcOf(a, profile[(i + 1) % profile.length]!));
  const { center, radius } = arcs.reduce((best, arc) => (arc.sweep > best.sweep ? arc : best));
  const sweep = arcs.reduce((sum, arc) => sum + arc.sweep, 0);
  const round =
    Math.abs(sweep - 2 * Math.PI) < tolerance.smooth * 100 &&
    profile.every((a, i) => {
      const mid = midpoint(a, profile[(i + 1) % profile.length]!);
      return [a, mid].every(
        (p) => Math.abs(Math.hypot(p.x - center.x, p.y - center.y) - radius) <= tolerance.samePoint,
      );
    });
  return round ? { center, radius } : undefined;
}

/** Calls back with each edge: the vertex it leaves and the one it ends in. */
export function eachEdge(profile: Profile, visit: (a: Vertex, b: Vertex, i: number) => void): void {
  for (let i = 0; i < profile.length; i++) visit(profile[i]!, profile[i + 1 === profile.length ? 0 : i + 1]!, i);
}

/** Area between an arc and its chord, mm²; positive where the arc turns left.
 *  r^2 (sweep - sin sweep) / 2; a flat arc by its series, as the difference would be lost to noise. */
function bowArea(a: Vertex, b: Point): number {
  const bulge = a.bulge;
  if (bulge === 0) return 0;
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const sweep = sweepOfBulge(bulge);
  if (Math.abs(bulge) < 1e-3) return ((chord * chord * sweep) / 12) * (1 + (sweep * sweep) / 30);
  const radius = radiusOf(chord, bulge);
  return (radius * radius * (sweep - Math.sin(sweep))) / 2;
}

/** Area and first moments about `o`. A bow's centre lies on its axis, (2/3) r^3 sin^3(sweep / 2) over its area from the
 *  arc's centre (Beer and Johnston, Vector Mechanics, centroids of common shapes; from memory); a flat one at 3/5 of its
 *  sagitta, as a parabola's. */
function momentOf(profile: Profile, o: Point): { area: number; x: number; y: number } {
  let area = 0;
  let x = 0;
  let y = 0;
  eachEdge(profile, (a, b) => {
    const triangle = ((a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)) / 2;
    area += triangle;
    x += (triangle * (a.x - o.x + (b.x - o.x))) / 3;
    y += (triangle * (a.y - o.y + (b.y - o.y))) / 3;
    if (a.bulge === 0) return;
    const bow = bowArea(a, b);
    const center = bowCentroid(a, b, bow);
    area += bow;
    x += bow * (center.x - o.x);
    y += bow * (center.y - o.y);
  });
  return { area, x, y };
}

function bowCentroid(a: Vertex, b: Point, bow: number): Point {
  const mid = midpoint(a, b);
  if (Math.abs(a.bulge) < 1e-3 || bow === 0) {
    const cx = (a.x + b.x) / 2;
    const cy = (a.y + b.y) / 2;
    return { x: cx + (mid.x - cx) * 0.6, y: cy + (mid.y - cy) * 0.6 };
  }
  const { center, radius, sweep } = arcOf(a, b);
  const along = ((2 / 3) * radius ** 2 * Math.abs(Math.sin(sweep / 2)) ** 3) / Math.abs(bow);
  return { x: center.x + (mid.x - center.x) * along, y: center.y + (mid.y - center.y) * along };
}

/** The left-, right-, top- and bottommost places of an arc that lie between its ends. */
function quadrantsOf(a: Vertex, b: Point): Point[] {
  if (isFlat(a, b)) return [];
  const { center, radius, start, sweep } = arcOf(a, b);
  const from = sweep > 0 ? start : start + sweep;
  const to = from + Math.abs(sweep);
  const places: Point[] = [];
  for (let k = Math.ceil(from / (Math.PI / 2)); k * (Math.PI / 2) < to; k++) {
    const [cos, sin] = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ][((k % 4) + 4) % 4]!;
    places.push({ x: center.x + radius * cos!, y: center.y + radius * sin! });
  }
  return places;
}
