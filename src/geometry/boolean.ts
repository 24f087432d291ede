import { facesOf } from "./faces.js";
import { type Keeps, regionsOf } from "./loops.js";
import { areaOf, eachEdge } from "./measure.js";
import { cutToPieces } from "./pieces.js";
import type { Profile, Region } from "./profile.js";
import { pushSegments, type Segment, segment } from "./segment.js";

/** A result, and whether the arrangement behind it was sound. */
export type Resolved = { readonly regions: Region[]; readonly sound: boolean };

/**
 * Everything that any of the regions covers, as regions that do not overlap. Arcs stay arcs; each edge keeps the name of
 * the edge it lies on, of the first one given where several do. Regions along a common edge grow together; regions that
 * only touch at a place stay two.
 */
export function union(regions: readonly Region[]): Region[] {
  return resolve(loopsOf(regions, 0), anyOfFirst).regions;
}

/** What `a` covers and none of `bs` does: none, one or several. The new edges keep the names that they have in `bs`. */
export function difference(a: Region, bs: readonly Region[]): Region[] {
  return resolve([...loopsOf([a], 0), ...loopsOf(bs, 1)], firstOnly).regions;
}

/** What both cover. */
export function intersection(a: Region, b: Region): Region[] {
  return resolve([...loopsOf([a], 0), ...loopsOf([b], 1)], inBoth).regions;
}

export const anyOfFirst: Keeps = (w0) => w0 > 0;
export const firstOnly: Keeps = (w0, w1) => w0 > 0 && w1 <= 0;
export const inBoth: Keeps = (w0, w1) => w0 > 0 && w1 > 0;

/** A closed loop that counts for one side; `reverse` where it is a hole. */
export type Loop = { readonly profile: Profile; readonly side: 0 | 1; readonly reverse: boolean };

export function loopsOf(regions: readonly Region[], side: 0 | 1): Loop[] {
  return regions.flatMap((region) => [
    { profile: region.outer, side, reverse: areaOf(region.outer) < 0 },
    ...region.holes.map((profile) => ({ profile, side, reverse: areaOf(profile) > 0 })),
  ]);
}

/**
 * The one road by which offsets and booleans are found:
 *
 * 1. Cut all edges where they meet; what runs together becomes one piece (pieces.ts, touching.ts).
 * 2. Divide the plane into faces with their winding numbers (faces.ts).
 * 3. Keep the faces that `keeps` wants and walk their boundary (loops.ts).
 *
 * Where welding has moved ends so that pieces cross again, Euler's formula fails in step 2; the pieces then go round
 * once more as edges.
 */
export function resolve(loops: readonly Loop[], keeps: Keeps): Resolved {
  const segments: Segment[] = [];
  for (const { profile, side, reverse } of loops) {
    if (!profile.every((v) => Number.isFinite(v.x) && Number.isFinite(v.y) && Number.isFinite(v.bulge))) {
      return { regions: [], sound: false };
    }
    const from = segments.length;
    eachEdge(profile, (a, b) => pushSegments(segments, a, b, side));
    if (reverse) for (let i = from; i < segments.length; i++) segments[i] = reversed(segments[i]!);
  }
  return resolveSegments(segments, keeps);
}

/** The same for segments that close to loops in any order. */
export function resolveSegments(segments: readonly Segment[], keeps: Keeps): Resolved {
  let round = segments;
  for (let tries = 0; ; tries++) {
    const pieces = cutToPieces(round);
    const faces = facesOf(pieces);
    if (faces.sound || tries === maxRounds) return { regions: regionsOf(faces, round, keeps), sound: faces.sound };
    round = segmentsAgain(pieces, round);
  }
}

const maxRounds = 3; // one nearly always settles it

function segmentsAgain(p: ReturnType<typeof cutToPieces>, of: readonly Segment[]): Segment[] {
  const again: Segment[] = [];
  for (let i = 0; i < p.from.length; i++) {
    const a = p.from[i]!;
    const b = p.to[i]!;
    const push = (times: number, side: 0 | 1) => {
      const source =
        of[times > 0 ? (p.onward[i]! >= 0 ? p.onward[i]! : p.back[i]!) : p.back[i]! >= 0 ? p.back[i]! : p.onward[i]!]!;
      const [u, v, bulge] = times > 0 ? [a, b, p.bulge[i]!] : [b, a, -p.bulge[i]!];
      for (let k = 0; k < Math.abs(times); k++) {
        again.push(segment(p.xs[u]!, p.ys[u]!, p.xs[v]!, p.ys[v]!, bulge, source.by, side));
      }
    };
    push(p.times0[i]!, 0);
    push(p.times1[i]!, 1);
  }
  return again;
}

function reversed(s: Segment): Segment {
  return { ...s, x0: s.x1, y0: s.y1, x1: s.x0, y1: s.y0, bulge: -s.bulge };
}
