import { arcOf, isFlat, midpoint } from "./arc.js";
import { eachEdge } from "./measure.js";
import type { Path, Point, Profile, Vertex } from "./profile.js";

/**
 * The profile as a polygon whose corners lie on it; an arc stands off its chords by no more than `chord`, mm. A polygon
 * is therefore smaller than what bows out and larger than what bows in.
 */
export function tessellate(profile: Profile, chord: number): Point[] {
  const points: Point[] = [];
  eachEdge(profile, (a, b) => pushEdge(points, a, b, chord));
  return points;
}

/** An open chain as straight pieces, both ends included. */
export function tessellatePath(path: Path, chord: number): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < path.length; i++) pushEdge(points, path[i]!, path[i + 1]!, chord);
  const last = path[path.length - 1];
  if (last !== undefined) points.push({ x: last.x, y: last.y });
  return points;
}

/** How many chords an arc needs: sweep / (2 acos(1 - chord / radius)), rounded up. Own derivation from the sagitta. */
export function chordsOf(radius: number, sweep: number, chord: number): number {
  const step = 2 * Math.acos(Math.max(-0.5, 1 - chord / radius));
  return Math.max(1, Math.ceil(Math.abs(sweep) / step - 1e-9));
}

function pushEdge(points: Point[], a: Vertex, b: Point, chord: number): void {
  points.push({ x: a.x, y: a.y });
  if (isFlat(a, b)) return;
  const { center, radius, start, sweep } = arcOf(a, b);
  const n = chordsOf(radius, sweep, chord);
  if (n === 2) points.push(midpoint(a, b));
  if (n <= 2) return;
  for (let i = 1; i < n; i++) {
    const angle = start + (sweep * i) / n;
    points.push({ x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) });
  }
}
