import { midpoint } from "./arc.js";
import { chainsOf, cutChain, type Piece } from "./chain.js";
import { pointInRegion } from "./inside.js";
import { eachEdge } from "./measure.js";
import type { Path, Region } from "./profile.js";
import { pushSegments, type Segment } from "./segment.js";
import { samePoint } from "./tolerance.js";

/**
 * The parts of a chain that lie inside, or outside, all of some regions together; in the chain's own order and
 * direction. What runs along a region's edge counts as inside.
 *
 * Shape: `closed` where the last vertex's edge returns to the first. A closed chain that nothing cuts comes back as one
 * path that ends where it starts.
 */
export function clipPath(path: Path, closed: boolean, regions: readonly Region[], keep: "inside" | "outside"): Path[] {
  const cutters = regions.flatMap((region) => [region.outer, ...region.holes]).flatMap(segmentsOfLoop);
  const pieces = cutChain(segmentsOfChain(path, closed), cutters);
  const wanted = pieces.map((piece) => isInside(piece, regions) === (keep === "inside"));
  const start = closed ? wanted.findIndex((w, i) => w && !wanted[(i + wanted.length - 1) % wanted.length]) : 0;
  const turned = start > 0 ? [...pieces.slice(start), ...pieces.slice(0, start)] : pieces;
  const kept = turned.filter((piece) => wanted[pieces.indexOf(piece)]);
  return chainsOf(kept);
}

function isInside(piece: Piece, regions: readonly Region[]): boolean {
  const middle = midpoint(piece.a, piece.b);
  return regions.some((region) => pointInRegion(region, middle));
}

function segmentsOfLoop(loop: Path): Segment[] {
  return segmentsOfChain(loop, true);
}

function segmentsOfChain(path: Path, closed: boolean): Segment[] {
  const segments: Segment[] = [];
  eachEdge(path, (a, b, i) => {
    if ((closed || i < path.length - 1) && !samePoint(a, b)) pushSegments(segments, a, b, 0);
  });
  return segments;
}
