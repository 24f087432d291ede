import { arcOf, bulgeOfSweep, directionAtStart, isFlat, sweepOfBulge, vectorLength } from "../geometry/arc.js";
import { nearestOnEdge } from "../geometry/distance.js";
import { edgeLength } from "../geometry/measure.js";
import type { Path, Point, Profile, Vertex } from "../geometry/profile.js";
import { samePoint } from "../geometry/tolerance.js";

/**
 * A chain by the length run along it, mm. `at[i]` is where edge i begins; a closed one is walked round and round, any
 * length is a place on it.
 */
export type Track = {
  readonly edges: readonly TrackEdge[];
  readonly at: readonly number[];
  readonly length: number;
  readonly closed: boolean;
};

export type TrackEdge = { readonly a: Vertex; readonly b: Point; readonly length: number };

/** A step along a track: the place reached, the bulge of the way there, and the length run at it. */
export type Step = { readonly to: Point; readonly bulge: number; readonly s: number };

/** The track round a closed loop, from its first vertex; edges without length are left out. */
export function trackRound(loop: Profile): Track {
  return trackOf([...loop, loop[0]!], true);
}

/** The track along an open chain. */
export function trackAlong(path: Path): Track {
  return trackOf(path, false);
}

function trackOf(chain: readonly Vertex[], closed: boolean): Track {
  const edges: TrackEdge[] = [];
  const at: number[] = [];
  let length = 0;
  for (let i = 0; i + 1 < chain.length; i++) {
    const [a, b] = [chain[i]!, chain[i + 1]!];
    if (samePoint(a, b)) continue;
    const edge = { a, b, length: edgeLength(a, b) };
    edges.push(edge);
    at.push(length);
    length += edge.length;
  }
  return { edges, at, length, closed };
}

const noise = 1e-9; // mm along the track

/** A length within the track: round and round on a closed one. */
function wrapped(track: Track, s: number): number {
  if (!track.closed) return Math.min(Math.max(s, 0), track.length);
  const rest = s % track.length;
  return rest < 0 ? rest + track.length : rest;
}

/** The number of the edge that a length lies on. */
export function edgeAt(track: Track, s: number): number {
  const place = wrapped(track, s);
  let [low, high] = [0, track.at.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (track.at[middle]! <= place) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The place at a length. */
export function placeAt(track: Track, s: number): Point {
  const i = edgeAt(track, s);
  const edge = track.edges[i]!;
  return along(edge, wrapped(track, s) - track.at[i]!);
}

/** The middle of the longest straight edge, a good place to begin; of the longest edge where none is straight. */
export function longestMiddle(track: Track): number {
  const straight = track.edges.filter(({ a, b }) => isFlat(a, b));
  const among = straight.length > 0 ? straight : track.edges;
  const longest = among.reduce((best, edge) => (edge.length > best.length + noise ? edge : best));
  return track.at[track.edges.indexOf(longest)]! + longest.length / 2;
}

/** The length at which a track comes nearest to a point. */
export function nearestLength(track: Track, p: Point): number {
  let [best, away] = [0, Number.POSITIVE_INFINITY];
  track.edges.forEach(({ a, b, length }, i) => {
    const foot = nearestOnEdge(a, b, p);
    const distance = vectorLength(foot.x - p.x, foot.y - p.y);
    if (distance >= away) return;
    [best, away] = [track.at[i]! + shareOf(a, b, foot) * length, distance];
  });
  return best;
}

/** How far along an edge a place on it lies, 0 to 1. */
export function shareOf(a: Vertex, b: Point, p: Point): number {
  if (isFlat(a, b)) {
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    return ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy);
  }
  const { center, start, sweep } = arcOf(a, b);
  const off = Math.atan2(p.y - center.y, p.x - center.x) - (start + sweep / 2);
  return 0.5 + (off - 2 * Math.PI * Math.round(off / (2 * Math.PI))) / sweep;
}

/** A unit vector along the track at a length. */
export function headingAt(track: Track, s: number): Point {
  const i = edgeAt(track, s);
  const { a, b, length } = track.edges[i]!;
  const heading = directionAtStart(a, b);
  if (isFlat(a, b)) return heading;
  const turn = sweepOfBulge(a.bulge) * ((wrapped(track, s) - track.at[i]!) / length);
  const [c, n] = [Math.cos(turn), Math.sin(turn)];
  return { x: heading.x * c - heading.y * n, y: heading.x * n + heading.y * c };
}

/** The steps from one length to a greater one, edge by edge; round and round on a closed track. */
export function stepsAlong(track: Track, from: number, to: number): readonly Step[] {
  const steps: Step[] = [];
  let s = from;
  let i = edgeAt(track, from);
  let inEdge = wrapped(track, from) - track.at[i]!;
  while (s < to - noise) {
    const edge = track.edges[i]!;
    const run = Math.min(edge.length - inEdge, to - s);
    if (run > noise) {
      s += run;
      const whole = inEdge + run >= edge.length - noise;
      const point = whole ? { x: edge.b.x, y: edge.b.y } : along(edge, inEdge + run);
      steps.push({ to: point, bulge: partOfBulge(edge, run), s });
    }
    if (!track.closed && i === track.edges.length - 1) break;
    i = (i + 1) % track.edges.length;
    inEdge = 0;
  }
  return steps;
}

/** The same track walked the other way. */
export function reversedTrack(track: Track): Track {
  const chain = track.edges.map(({ a, b }) => ({ x: b.x, y: b.y, bulge: 0 - a.bulge, by: a.by })).reverse();
  const end = track.edges[0]!.a;
  return trackOf([...chain, { ...end, bulge: 0 }], track.closed);
}

function along({ a, b, length }: TrackEdge, s: number): Point {
  const share = length === 0 ? 0 : s / length;
  if (isFlat(a, b)) return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  const { center, radius, start, sweep } = arcOf(a, b);
  const angle = start + sweep * share;
  return { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
}

function partOfBulge({ a, b, length }: TrackEdge, run: number): number {
  if (isFlat(a, b)) return 0;
  return run === length ? a.bulge : bulgeOfSweep((sweepOfBulge(a.bulge) * run) / length);
}
