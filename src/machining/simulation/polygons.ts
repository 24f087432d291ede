import { areaPathsD, booleanOpD, ClipType, EndType, FillRule, inflatePathsD, JoinType, type PathsD } from "clipper2-ts";

export type Point = { readonly x: number; readonly y: number };
export type Polygon = readonly Point[];
/** Areas with holes: outers run counter-clockwise, holes clockwise. mm. */
export type Polygons = readonly Polygon[];
export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** The library counts in ten-thousandths of a millimetre. */
const digits = 4;

const open = (polygons: Polygons): PathsD => polygons.map((polygon) => [...polygon]);

export const union = (all: Polygons): Polygons => booleanOpD(ClipType.Union, open(all), null, FillRule.NonZero, digits);
export const without = (from: Polygons, taken: Polygons): Polygons =>
  booleanOpD(ClipType.Difference, open(from), open(taken), FillRule.NonZero, digits);
export const both = (a: Polygons, b: Polygons): Polygons =>
  booleanOpD(ClipType.Intersection, open(a), open(b), FillRule.NonZero, digits);

/** Area less holes, mm². */
export const areaOf = (polygons: Polygons): number => areaPathsD(open(polygons));

/** Moves the edges outwards, or inwards where `by` is negative, with round corners true to `chord`. */
export function grown(polygons: Polygons, by: number, chord: number): Polygons {
  return by === 0
    ? polygons
    : inflatePathsD(open(polygons), by, JoinType.Round, EndType.Polygon, 2, digits, Math.min(chord, Math.abs(by) / 4));
}

/** What a disc takes on an open line of straight pieces, both ends included. */
export function sweptLine(line: Polygon, radius: number, chord: number): Polygons {
  return inflatePathsD([[...line]], radius, JoinType.Round, EndType.Round, 2, digits, Math.min(chord, radius / 4));
}

/** A regular polygon on a circle, true to `chord`, counter-clockwise. */
export function disc(center: Point, radius: number, chord: number): Polygon {
  return bow(center, radius, 0, 2 * Math.PI, chord).slice(1);
}

/** What a disc takes on a straight way, but for its two ends. */
export function bar(a: Point, b: Point, radius: number): Polygon {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const x = (-(b.y - a.y) * radius) / length;
  const y = ((b.x - a.x) * radius) / length;
  return [
    { x: a.x - x, y: a.y - y },
    { x: b.x - x, y: b.y - y },
    { x: b.x + x, y: b.y + y },
    { x: a.x + x, y: a.y + y },
  ];
}

/** What a disc takes on an arc about `center` that starts at `from`, but for its two ends: a sector of a ring, or one of
 *  a disc where it reaches over the centre. Counter-clockwise. */
export function sector(center: Point, way: number, from: Point, sweep: number, radius: number, chord: number): Polygon {
  const angle = Math.atan2(from.y - center.y, from.x - center.x) + Math.min(0, sweep);
  const turn = Math.abs(sweep);
  const outer = bow(center, way + radius, angle, turn, chord);
  return way <= radius
    ? [...outer, center]
    : [...outer, ...[...bow(center, way - radius, angle, turn, chord)].reverse()];
}

/** Places on an arc, both ends included. */
function bow(center: Point, radius: number, start: number, sweep: number, chord: number): Polygon {
  const step = 2 * Math.acos(1 - Math.min(chord, radius / 4) / radius);
  const pieces = Math.max(1, Math.ceil(sweep / step));
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const angle = start + (sweep * i) / pieces;
    return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
  });
}

export function boxOf(polygons: Polygons): Box {
  const box = {
    x0: Number.POSITIVE_INFINITY,
    y0: Number.POSITIVE_INFINITY,
    x1: -Number.POSITIVE_INFINITY,
    y1: -Number.POSITIVE_INFINITY,
  };
  for (const { x, y } of polygons.flat()) {
    box.x0 = Math.min(box.x0, x);
    box.y0 = Math.min(box.y0, y);
    box.x1 = Math.max(box.x1, x);
    box.y1 = Math.max(box.y1, y);
  }
  return box;
}

export const widened = ({ x0, y0, x1, y1 }: Box, by: number): Box => ({
  x0: x0 - by,
  y0: y0 - by,
  x1: x1 + by,
  y1: y1 + by,
});
export const meet = (a: Box, b: Box): boolean => a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;

/** Separate areas, each its outer and the holes in it. */
export function separate(polygons: Polygons): readonly Polygons[] {
  const clean = union(polygons);
  const outers = clean.filter((polygon) => areaOf([polygon]) > 0);
  const holes = clean.filter((polygon) => areaOf([polygon]) < 0);
  return outers.map((outer) => [outer, ...holes.filter((hole) => outerOf(hole, outers) === outer)]);
}

/** The smallest outer around a hole. */
function outerOf(hole: Polygon, outers: Polygons): Polygon | undefined {
  return outers
    .filter((outer) => isInside(hole[0]!, outer))
    .reduce<Polygon | undefined>((a, b) => (a === undefined || areaOf([b]) < areaOf([a]) ? b : a), undefined);
}

export function isInside({ x, y }: Point, polygon: Polygon): boolean {
  let inside = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
  });
  return inside;
}

/** Distance from a place to the nearest edge, mm. */
export function distanceTo(polygons: Polygons, { x, y }: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const polygon of polygons)
    polygon.forEach((a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      const along = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(a.x + along * dx - x, a.y + along * dy - y));
    });
  return least;
}
