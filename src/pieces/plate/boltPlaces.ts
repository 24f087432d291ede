import { arcOf } from "../../geometry/arc.js";
import { pointInRegion } from "../../geometry/inside.js";
import { areaOf } from "../../geometry/measure.js";
import { offsetProfile } from "../../geometry/offset.js";
import type { Point, Profile, Region } from "../../geometry/profile.js";

/**
 * Places for bolts along a line set in from an area's edge, as far apart as they will go.
 *
 * 1. The line is the area's outline moved inwards by `setIn`.
 * 2. Candidates are its corners and, along each edge, evenly spaced places at most `pitch` apart that include its middle;
 *    those within a keep-out are dropped.
 * 3. Corners come first, then always the candidate farthest from those chosen (of equals the first): farthest-point
 *    sampling (T. F. Gonzalez, "Clustering to minimize the maximum intercluster distance", Theoretical Computer Science
 *    38, 1985; from memory).
 *
 * Returns: at most `wanted` places, counter-clockwise along the line; fewer where there is no room.
 */
export function boltPlaces(area: Region, setIn: number, wanted: number, keepOut: readonly Region[]): readonly Point[] {
  const line = largest(offsetProfile(area.outer, -setIn));
  if (line === undefined) return [];
  const free = candidates(line).filter(({ at }) => !keepOut.some((region) => pointInRegion(region, at)));
  const corners = free.flatMap((candidate, index) => (candidate.corner ? [index] : []));
  return farthestApart(free, corners.slice(0, wanted), wanted).map((index) => free[index]!.at);
}

type Candidate = { readonly at: Point; readonly corner: boolean };

const pitch = 5; // mm

function candidates(line: Profile): readonly Candidate[] {
  return line.flatMap((vertex, index) => {
    const next = line[(index + 1) % line.length]!;
    const chord = Math.hypot(next.x - vertex.x, next.y - vertex.y);
    const count = 2 * Math.max(1, Math.ceil(chord / (2 * pitch)));
    return Array.from({ length: count }, (_, i) => ({ at: along(vertex, next, i / count), corner: i === 0 }));
  });
}

function along(vertex: Profile[number], next: Point, t: number): Point {
  if (vertex.bulge === 0) return { x: vertex.x + (next.x - vertex.x) * t, y: vertex.y + (next.y - vertex.y) * t };
  const { center, radius, start, sweep } = arcOf(vertex, next);
  const angle = start + sweep * t;
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

/** Indices of the chosen in order: the first ones given, then the one farthest from all chosen so far, again and again. */
function farthestApart(free: readonly Candidate[], first: readonly number[], wanted: number): readonly number[] {
  const chosen = first.length > 0 ? [...first] : free.length > 0 ? [0] : [];
  const away = free.map(() => Number.POSITIVE_INFINITY);
  const bring = (by: number) => {
    const { at } = free[by]!;
    free.forEach((candidate, index) => {
      away[index] = Math.min(away[index]!, Math.hypot(candidate.at.x - at.x, candidate.at.y - at.y));
    });
  };
  chosen.forEach(bring);
  while (chosen.length < Math.min(wanted, free.length)) {
    // Less than a hundredth of a millimetre is no difference: noise would choose between mirror images.
    const next = away.reduce((best, distance, index) => (distance > away[best]! + 0.01 ? index : best), 0);
    chosen.push(next);
    bring(next);
  }
  return chosen.sort((a, b) => a - b);
}

function largest(profiles: readonly Profile[]): Profile | undefined {
  return [...profiles].sort((a, b) => areaOf(b) - areaOf(a))[0];
}
