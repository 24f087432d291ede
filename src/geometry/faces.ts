import { vectorLength } from "./arc.js";
import { indexBoxes, searchBoxes } from "./boxes.js";
import type { Pieces } from "./pieces.js";
import { boxOfSegment, segment } from "./segment.js";
import { turnsPastEdge } from "./winding.js";

/**
 * The plane divided by pieces into faces, each with how often the loops of side 0 and side 1 run round it.
 *
 * Half-edge 2i walks piece i from `from` to `to`, 2i + 1 walks it back; a half-edge's face lies on its left.
 */
export type Faces = {
  readonly pieces: Pieces;
  /** The half-edges in use: pieces along which the loops cancel are left out. */
  readonly halfEdges: readonly number[];
  /** By half-edge: the next one that leaves the same place, clockwise. */
  readonly clockwise: Int32Array;
  readonly faceOf: Int32Array;
  readonly winding0: Int32Array;
  readonly winding1: Int32Array;
  /** False where the order around the places does not fit a plane (Euler's formula), or where loops do not close. */
  readonly sound: boolean;
};

/**
 * 1. Drop the pieces along which the loops run as often back as onward.
 * 2. Order the half-edges that leave each place by direction; where two set out alike, by where they are halfway along
 *    the shorter one.
 * 3. Walk each face: onward along a half-edge, then clockwise from its reverse.
 * 4. Count: places - pieces + faces must be two for each connected part (Euler). This catches any wrong order or missed
 *    crossing that could turn a face inside out.
 * 5. Winding: the outer face of a connected part has that of the place it lies in, by a ray to the right through the
 *    other parts; each piece crossed from right to left adds its count.
 *
 * Source: the doubly connected edge list, M. de Berg et al., Computational Geometry, 3rd ed., chapter 2 (from memory);
 * winding numbers instead of inside and outside, as for polygons in B. Vatti (1992) and its successors.
 */
export function facesOf(pieces: Pieces): Faces {
  const halfEdges = liveHalfEdges(pieces);
  const clockwise = orderAround(pieces, halfEdges);
  const faceOf = new Int32Array(pieces.from.length * 2).fill(-1);
  const first: number[] = [];
  for (const h of halfEdges) {
    if (faceOf[h] !== -1) continue;
    for (let at = h; faceOf[at] === -1; at = clockwise[at ^ 1]!) faceOf[at] = first.length;
    first.push(h);
  }
  const parts = partsOf(pieces, halfEdges, clockwise, first);
  const winding0 = new Int32Array(first.length);
  const winding1 = new Int32Array(first.length);
  const faces = { pieces, halfEdges, clockwise, faceOf, winding0, winding1 };
  const planar = parts.places - halfEdges.length / 2 + first.length === 2 * parts.outer.length;
  return { ...faces, sound: spreadWindings(faces, parts, first) && planar };
}

/** The place that a half-edge leaves. */
export function leaves(pieces: Pieces, h: number): number {
  return h & 1 ? pieces.to[h >> 1]! : pieces.from[h >> 1]!;
}

/** Bulge of a half-edge in its own direction. */
export function bulgeOf(pieces: Pieces, h: number): number {
  return h & 1 ? -pieces.bulge[h >> 1]! : pieces.bulge[h >> 1]!;
}

function liveHalfEdges(p: Pieces): number[] {
  const live: number[] = [];
  for (let i = 0; i < p.from.length; i++) if (p.times0[i] !== 0 || p.times1[i] !== 0) live.push(2 * i, 2 * i + 1);
  return live;
}

function orderAround(p: Pieces, halfEdges: readonly number[]): Int32Array {
  const around: number[][] = new Array(p.xs.length);
  for (const h of halfEdges) {
    const place = leaves(p, h);
    const held = around[place];
    if (held === undefined) around[place] = [h];
    else held.push(h);
  }
  const clockwise = new Int32Array(p.from.length * 2).fill(-1);
  for (const leaving of around) {
    if (leaving === undefined) continue;
    const sorted = leaving.length > 2 ? byDirection(p, leaving) : leaving;
    sorted.forEach((h, i) => {
      clockwise[h] = sorted[i === 0 ? sorted.length - 1 : i - 1]!;
    });
  }
  return clockwise;
}

type Ray = { readonly h: number; readonly chord: number; readonly bulge: number; angle: number };

/** Counter-clockwise. Starts after the widest gap, so that no two that set out alike are parted by the turn of 2 pi. */
function byDirection(p: Pieces, leaving: readonly number[]): number[] {
  const rays = leaving.map((h) => rayOf(p, h)).sort((a, b) => a.angle - b.angle);
  let start = 0;
  let widest = -1;
  rays.forEach((ray, i) => {
    const before = rays[i === 0 ? rays.length - 1 : i - 1]!;
    const gap = ray.angle - before.angle + (i === 0 ? 2 * Math.PI : 0);
    if (gap <= widest) return;
    widest = gap;
    start = i;
  });
  const unwound = rays.map((_, i) => {
    const ray = rays[(start + i) % rays.length]!;
    if (start + i >= rays.length) ray.angle += 2 * Math.PI;
    return ray;
  });
  return unwound.sort(compareRays).map((ray) => ray.h);
}

function rayOf(p: Pieces, h: number): Ray {
  const a = leaves(p, h);
  const b = leaves(p, h ^ 1);
  const dx = p.xs[b]! - p.xs[a]!;
  const dy = p.ys[b]! - p.ys[a]!;
  const bulge = bulgeOf(p, h);
  return { h, chord: vectorLength(dx, dy), bulge, angle: Math.atan2(dy, dx) - 2 * Math.atan(bulge) };
}

const alike = 0.01; // rad; any value does that is far above noise and far below a quarter turn

function compareRays(a: Ray, b: Ray): number {
  if (Math.abs(a.angle - b.angle) > alike) return a.angle - b.angle;
  const reach = Math.min(a.chord, b.chord) / 2;
  return a.angle + swerve(a, reach) - b.angle - swerve(b, reach);
}

/** How far an arc has swerved from its first direction, seen from its start, when it is `reach` away. */
function swerve(ray: Ray, reach: number): number {
  if (ray.bulge === 0) return 0;
  const sine = (reach / ray.chord) * ((2 * Math.abs(ray.bulge)) / (1 + ray.bulge * ray.bulge));
  return Math.sign(ray.bulge) * Math.asin(Math.min(1, sine));
}

/** What hangs together: by half-edge its part, by part the face that lies around it and one place of it. */
type Parts = {
  readonly partOf: Int32Array;
  readonly outer: number[];
  readonly start: number[];
  readonly places: number;
};

function partsOf(p: Pieces, halfEdges: readonly number[], clockwise: Int32Array, first: readonly number[]): Parts {
  const partOf = new Int32Array(p.from.length * 2).fill(-1);
  const start: number[] = [];
  const seen = new Uint8Array(p.xs.length);
  let places = 0;
  for (const h of halfEdges) {
    if (partOf[h] !== -1) continue;
    const stack = [h];
    partOf[h] = start.length;
    while (stack.length > 0) {
      const at = stack.pop()!;
      if (seen[leaves(p, at)] === 0) places++;
      seen[leaves(p, at)] = 1;
      for (const next of [at ^ 1, clockwise[at]!]) {
        if (partOf[next] !== -1) continue;
        partOf[next] = start.length;
        stack.push(next);
      }
    }
    start.push(leaves(p, h));
  }
  return { partOf, outer: outerFaces(p, clockwise, first, partOf, start.length), start, places };
}

/** Of each part the face walked clockwise: the one whose area comes out least. */
function outerFaces(
  p: Pieces,
  clockwise: Int32Array,
  first: readonly number[],
  partOf: Int32Array,
  n: number,
): number[] {
  const outer: number[] = new Array(n).fill(-1);
  const least: number[] = new Array(n).fill(Number.POSITIVE_INFINITY);
  first.forEach((h, face) => {
    const part = partOf[h]!;
    const area = walkedArea(p, clockwise, h);
    if (area >= least[part]!) return;
    least[part] = area;
    outer[part] = face;
  });
  return outer;
}

function walkedArea(p: Pieces, clockwise: Int32Array, h: number): number {
  const ox = p.xs[leaves(p, h)]!;
  const oy = p.ys[leaves(p, h)]!;
  let twice = 0;
  let at = h;
  do {
    const a = leaves(p, at);
    const b = leaves(p, at ^ 1);
    twice += (p.xs[a]! - ox) * (p.ys[b]! - oy) - (p.ys[a]! - oy) * (p.xs[b]! - ox);
    twice += twiceBow(bulgeOf(p, at), p.xs[b]! - p.xs[a]!, p.ys[b]! - p.ys[a]!);
    at = clockwise[at ^ 1]!;
  } while (at !== h);
  return twice;
}

function twiceBow(bulge: number, dx: number, dy: number): number {
  if (bulge === 0) return 0;
  const square = dx * dx + dy * dy;
  if (Math.abs(bulge) < 0.01) return (square * bulge * 2) / 3;
  const sweep = 4 * Math.atan(bulge);
  const radiusSquare = (square * (1 + bulge * bulge) ** 2) / (16 * bulge * bulge);
  return radiusSquare * (sweep - Math.sin(sweep));
}

type Walks = Omit<Faces, "sound">;

/** Carries the windings from the outer faces inwards; false where two ways to a face disagree. */
function spreadWindings(faces: Walks, parts: Parts, first: readonly number[]): boolean {
  const { pieces, faceOf, clockwise, winding0, winding1 } = faces;
  const known = new Uint8Array(first.length);
  const around = parts.outer.length > 1 ? windingsAround(faces, parts) : [[0, 0] as const];
  let sound = true;
  parts.outer.forEach((outer, part) => {
    [winding0[outer], winding1[outer]] = around[part]!;
    known[outer] = 1;
    const stack = [outer];
    while (stack.length > 0) {
      const face = stack.pop()!;
      let h = first[face]!;
      do {
        const over = faceOf[h ^ 1]!;
        const sign = h & 1 ? 1 : -1; // from the left of h to its right
        const w0 = winding0[face]! + sign * pieces.times0[h >> 1]!;
        const w1 = winding1[face]! + sign * pieces.times1[h >> 1]!;
        if (known[over] === 0) {
          known[over] = 1;
          winding0[over] = w0;
          winding1[over] = w1;
          stack.push(over);
        } else if (winding0[over] !== w0 || winding1[over] !== w1) sound = false;
        h = clockwise[h ^ 1]!;
      } while (h !== first[face]);
    }
  });
  return sound;
}

/** For each part, how often the loops of all other parts run round it. */
function windingsAround(faces: Walks, parts: Parts): (readonly [number, number])[] {
  const { pieces: p, halfEdges } = faces;
  const live = halfEdges.filter((h) => (h & 1) === 0);
  const arcs = live.map((h) => segmentOf(p, h));
  const boxes = new Float64Array(live.length * 4);
  arcs.forEach((s, i) => {
    boxOfSegment(s, 0, boxes, i * 4);
  });
  const index = indexBoxes(boxes);
  return parts.start.map((place, part) => {
    const x = p.xs[place]!;
    const y = p.ys[place]!;
    const sum: [number, number] = [0, 0];
    searchBoxes(index, x, y, Number.POSITIVE_INFINITY, y, (i) => {
      if (parts.partOf[live[i]!] === part) return;
      const s = arcs[i]!;
      const turns = turnsPastEdge({ x: s.x0, y: s.y0, bulge: s.bulge, by: "" }, { x: s.x1, y: s.y1 }, { x, y });
      sum[0] += turns * p.times0[live[i]! >> 1]!;
      sum[1] += turns * p.times1[live[i]! >> 1]!;
    });
    return sum;
  });
}

function segmentOf(p: Pieces, h: number) {
  const a = leaves(p, h);
  const b = leaves(p, h ^ 1);
  return segment(p.xs[a]!, p.ys[a]!, p.xs[b]!, p.ys[b]!, bulgeOf(p, h), "", 0);
}
