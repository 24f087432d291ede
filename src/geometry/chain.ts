import { eachNeighbours } from "./pieces.js";
import type { Path, Point, Vertex } from "./profile.js";
import { alongSegment, bulgeBetween, type Segment } from "./segment.js";
import { mergePath } from "./tidy.js";
import { samePoint, tolerance } from "./tolerance.js";
import { sharedPlaces } from "./touching.js";

/** An edge standing alone. */
export type Piece = { readonly a: Vertex; readonly b: Point };

/** The segments of a chain, in order, cut wherever they meet one another or a cutter. */
export function cutChain(chain: readonly Segment[], cutters: readonly Segment[]): Piece[] {
  const cuts: Point[][] = chain.map(() => []);
  eachNeighbours([...chain, ...cutters], (i, j) => {
    if (i >= chain.length) return;
    const other = chain[j] ?? cutters[j - chain.length]!;
    sharedPlaces(chain[i]!, other, (x, y) => {
      cuts[i]!.push({ x, y });
      cuts[j]?.push({ x, y });
    });
  });
  return chain.flatMap((s, i) => cutSegment(s, cuts[i]!));
}

function cutSegment(s: Segment, cuts: readonly Point[]): Piece[] {
  const square = (s.x1 - s.x0) ** 2 + (s.y1 - s.y0) ** 2;
  const margin = tolerance.samePoint * Math.sqrt(square);
  const between = cuts
    .map((p) => ({ p, along: alongSegment(s, p.x, p.y) }))
    .filter(({ along }) => along > margin && along < square - margin)
    .sort((a, b) => a.along - b.along)
    .map(({ p }) => p);
  const places: Point[] = [{ x: s.x0, y: s.y0 }];
  for (const p of [...between, { x: s.x1, y: s.y1 }]) if (!samePoint(p, places[places.length - 1]!)) places.push(p);
  places[places.length - 1] = { x: s.x1, y: s.y1 };
  return places.slice(1).map((b, i) => {
    const a = places[i]!;
    return { a: { ...a, bulge: bulgeBetween(s, a.x, a.y, b.x, b.y), by: s.by }, b };
  });
}

/** Pieces in order, put together again wherever one starts where the one before ended. */
export function chainsOf(pieces: readonly Piece[]): Path[] {
  const runs: Piece[][] = [];
  for (const piece of pieces) {
    const run = runs[runs.length - 1];
    if (run !== undefined && samePoint(run[run.length - 1]!.b, piece.a)) run.push(piece);
    else runs.push([piece]);
  }
  return runs.map((run) => {
    const last = run[run.length - 1]!;
    return mergePath([...run.map((piece) => piece.a), { ...last.b, bulge: 0, by: last.a.by }]);
  });
}
