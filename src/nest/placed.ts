import type { Extents, Path, Point, Profile, Region, Vertex } from "../geometry/profile.js";
import type { Placed } from "../model/build.js";
import type { Part } from "../model/part.js";

/** Carries a part's geometry, given in the part's frame seen from the face, to where it lies on the sheet. */
export type ToSheet = {
  readonly point: (p: Point) => Point;
  /** Counter-clockwise in, counter-clockwise out, with the back up too. */
  readonly region: (region: Region) => Region;
  /** Keeps its direction; with the back up its arcs turn the other way. */
  readonly path: (path: Path) => Path;
};

/**
 * The way from a part's frame to its sheet: mirrored (x to -x) if its back is up, turned, then shifted so that the
 * lower left corner of the blank's extents lies at x, y. mm, rad.
 */
export function toSheet(part: Part, placed: Placed): ToSheet {
  const laid = layBlank(part.blank, placed.turn, placed.backUp);
  const { min } = extentsOfProfile(laid.outer);
  const shift = (p: Point): Point => ({ x: p.x - min.x + placed.x, y: p.y - min.y + placed.y });
  const point = (p: Point): Point => shift(turned(placed.turn, placed.backUp ? mirrored(p) : p));
  return {
    point,
    region: (region) => mapRegion(region, point, placed.backUp),
    path: (path) => path.map((v) => ({ ...v, ...point(v), bulge: placed.backUp ? 0 - v.bulge : v.bulge })),
  };
}

/** A blank mirrored if its back is up, then turned about the part's origin: its shape on the sheet, not its place. */
export function layBlank(blank: Region, turn: number, backUp: boolean): Region {
  return mapRegion(blank, (p) => turned(turn, backUp ? mirrored(p) : p), backUp);
}

const mirrored = (p: Point): Point => ({ x: -p.x, y: p.y });

/** Quarter turns come out exact: a rectangle laid across a sheet keeps its sizes to the last bit. */
function turned(turn: number, p: Point): Point {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const cos = Math.abs(c) < 1e-12 ? 0 : c;
  const sin = Math.abs(s) < 1e-12 ? 0 : s;
  return { x: cos * p.x - sin * p.y, y: sin * p.x + cos * p.y };
}

function mapRegion(region: Region, point: (p: Point) => Point, mirror: boolean): Region {
  const profile = (p: Profile) => (mirror ? reversed(moved(p, point)) : moved(p, point));
  return { outer: profile(region.outer), holes: region.holes.map(profile) };
}

const moved = (profile: Profile, point: (p: Point) => Point): Profile => profile.map((v) => ({ ...v, ...point(v) }));

/** A mirrored profile runs clockwise: walked backwards it is counter-clockwise again and its bulges keep their sign. */
function reversed(profile: Profile): Profile {
  const n = profile.length;
  return profile.map((_, i): Vertex => {
    const at = profile[(n - i) % n]!;
    const edge = profile[(2 * n - i - 1) % n]!;
    return { x: at.x, y: at.y, bulge: edge.bulge, by: edge.by };
  });
}

function extentsOfProfile(profile: Profile): Extents {
  const points = profile.flatMap((v, i) => [v, ...extremes(v, profile[(i + 1) % profile.length]!)]);
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { min: { x: Math.min(...xs), y: Math.min(...ys) }, max: { x: Math.max(...xs), y: Math.max(...ys) } };
}

/** Where an arc goes furthest left, right, down and up. */
function extremes(from: Vertex, to: Point): Point[] {
  if (from.bulge === 0) return [];
  const b = from.bulge;
  const k = (1 - b * b) / (4 * b);
  const cx = (from.x + to.x) / 2 - k * (to.y - from.y);
  const cy = (from.y + to.y) / 2 + k * (to.x - from.x);
  const r = Math.hypot(from.x - cx, from.y - cy);
  const start = Math.atan2(from.y - cy, from.x - cx);
  const sweep = 4 * Math.atan(b);
  return [0, 1, 2, 3]
    .map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => {
      const gone = (((Math.sign(sweep) * (angle - start)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      return gone < Math.abs(sweep);
    })
    .map((angle) => ({ x: cx + r * Math.cos(angle), y: cy + r * Math.sin(angle) }));
}
