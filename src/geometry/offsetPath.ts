import { midpoint } from "./arc.js";
import { chainsOf, cutChain } from "./chain.js";
import { nearestOnPath } from "./distance.js";
import { eachEdge } from "./measure.js";
import type { Path, Point } from "./profile.js";
import { rawOffsetOfPath } from "./rawOffset.js";
import { pushSegments, type Segment } from "./segment.js";
import { circle } from "./shapes.js";
import { tolerance } from "./tolerance.js";

/**
 * Moves an open chain sideways; arcs stay arcs. It ends square to where the chain ends.
 *
 * Shape:    open in, none, one or several open out, in the chain's own direction.
 * Units:    mm; positive to the right of the way it is walked, as growth is for a counter-clockwise profile.
 * Corners:  those that open are round.
 * Source:   trimming of self-intersections and a check of the distance to the source, e.g. X.-Z. Liu et al., "An offset
 *           algorithm for polyline curves", Computers in Industry 58 (2007); from memory.
 *
 * 1. Move every edge, join them (rawOffset.ts).
 * 2. Cut the moved chain wherever it may come too near the source: where it meets itself, the chain moved to the other
 *    side, or the circles of the distance about both ends.
 * 3. Drop what lies nearer to the source than the distance. Put the rest together again in order.
 */
export function offsetPath(path: Path, distance: number): Path[] {
  if (path.length < 2 || !path.every(isFinitePlace) || !Number.isFinite(distance)) return [];
  if (distance === 0) return [path];
  const reach = Math.abs(distance);
  const ends = [path[0]!, path[path.length - 1]!].flatMap((end) => circleSegments(end, reach));
  const pieces = cutChain(rawOffsetOfPath(path, distance), [...rawOffsetOfPath(path, -distance), ...ends]);
  return chainsOf(
    pieces.filter(({ a, b }) => nearestOnPath(path, midpoint(a, b))!.distance >= reach - 2 * tolerance.samePoint),
  );
}

function circleSegments(center: Point, radius: number): Segment[] {
  const segments: Segment[] = [];
  eachEdge(circle(center, radius, ""), (a, b) => pushSegments(segments, a, b, 0));
  return segments;
}

function isFinitePlace(v: Path[number]): boolean {
  return Number.isFinite(v.x) && Number.isFinite(v.y) && Number.isFinite(v.bulge);
}
