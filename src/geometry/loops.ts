import { midpoint } from "./arc.js";
import { bulgeOf, type Faces, leaves } from "./faces.js";
import { areaOf, eachEdge, lengthOf } from "./measure.js";
import type { Point, Profile, Region, Vertex } from "./profile.js";
import type { Segment } from "./segment.js";
import { againstTheClock } from "./shapes.js";
import { mergeRuns } from "./tidy.js";
import { tolerance } from "./tolerance.js";
import { winding } from "./winding.js";

/** Whether a place round which the loops of the two sides run so often belongs to the result. */
export type Keeps = (winding0: number, winding1: number) => boolean;

/**
 * The boundary of the faces that are kept, as outers with their holes.
 *
 * 1. A half-edge with a kept face on its left and none on its right is boundary.
 * 2. Walk on from each through the kept wedge at its end: the first boundary half-edge clockwise from its reverse.
 * 3. Cut a walk that comes past a place twice into loops that do not, so that what only touches falls apart.
 * 4. Join the pieces of one edge again (tidy.ts); drop loops that are thinner than noise all along.
 * 5. Counter-clockwise loops are outers, clockwise ones holes of the smallest outer around them.
 */
export function regionsOf(faces: Faces, segments: readonly Segment[], keeps: Keeps): Region[] {
  const outers: Profile[] = [];
  const holes: Hole[] = [];
  for (const walk of boundaryWalks(faces, keeps)) {
    for (const simple of simpleLoops(faces, walk)) {
      const pieces = verticesOf(faces, segments, simple);
      const loop = mergeRuns(pieces);
      const area = areaOf(loop);
      if (loop.length < 2 || Math.abs(area) <= tolerance.samePoint * lengthOf(loop)) continue;
      if (area > 0) outers.push(loop);
      else holes.push({ loop: againstTheClock(loop), probe: longestMiddle(pieces) });
    }
  }
  return assignHoles(outers, holes);
}

function boundaryWalks(faces: Faces, keeps: Keeps): number[][] {
  const { pieces, halfEdges, clockwise, faceOf, winding0, winding1 } = faces;
  const kept = Uint8Array.from(winding0, (w, face) => (keeps(w, winding1[face]!) ? 1 : 0));
  const open = new Uint8Array(pieces.from.length * 2);
  for (const h of halfEdges) if (kept[faceOf[h]!] === 1 && kept[faceOf[h ^ 1]!] === 0) open[h] = 1;
  const walks: number[][] = [];
  for (const start of halfEdges) {
    if (open[start] === 0) continue;
    const walk: number[] = [];
    let h = start;
    do {
      open[h] = 0;
      walk.push(h);
      const end = h ^ 1;
      h = clockwise[end]!;
      while (h !== end && h !== start && open[h] === 0) h = clockwise[h]!;
    } while (h !== start && open[h] === 1);
    walks.push(walk);
  }
  return walks;
}

/** Cuts a walk wherever it comes back to a place it has left. */
function simpleLoops(faces: Faces, walk: readonly number[]): number[][] {
  const loops: number[][] = [];
  const path: number[] = [];
  const leftAt = new Map<number, number>();
  for (const h of walk) {
    leftAt.set(leaves(faces.pieces, h), path.length);
    path.push(h);
    const back = leftAt.get(leaves(faces.pieces, h ^ 1));
    if (back === undefined) continue;
    const loop = path.splice(back);
    for (const gone of loop) leftAt.delete(leaves(faces.pieces, gone));
    loops.push(loop);
  }
  return loops;
}

function verticesOf(faces: Faces, segments: readonly Segment[], loop: readonly number[]): Vertex[] {
  const { pieces } = faces;
  return loop.map((h) => {
    const place = leaves(pieces, h);
    const { by } = segments[segmentAlong(faces, h)]!;
    return { x: pieces.xs[place]!, y: pieces.ys[place]!, bulge: bulgeOf(pieces, h), by };
  });
}

/** The segment that a half-edge came from, first one that ran the same way. */
function segmentAlong({ pieces }: Faces, h: number): number {
  const i = h >> 1;
  const same = h & 1 ? pieces.back[i]! : pieces.onward[i]!;
  const other = h & 1 ? pieces.onward[i]! : pieces.back[i]!;
  return same >= 0 ? same : other;
}

/** A hole and a place on its edge where nothing else touches it: pieces touch at their ends alone. */
type Hole = { readonly loop: Profile; readonly probe: Point };

function assignHoles(outers: readonly Profile[], holes: readonly Hole[]): Region[] {
  if (holes.length === 0) return outers.map((outer) => ({ outer, holes: [] }));
  const areas = outers.map(areaOf);
  const inside: Profile[][] = outers.map(() => []);
  for (const { loop, probe } of holes) {
    let best = -1;
    outers.forEach((outer, i) => {
      if (winding(outer, probe) !== 0 && (best < 0 || areas[i]! < areas[best]!)) best = i;
    });
    if (best >= 0) inside[best]!.push(loop);
  }
  return outers.map((outer, i) => ({ outer, holes: inside[i]! }));
}

/** Halfway along the longest piece. */
function longestMiddle(pieces: Profile): Point {
  let longest = -1;
  let middle: Point = { x: 0, y: 0 };
  eachEdge(pieces, (a, b) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length <= longest) return;
    longest = length;
    middle = midpoint(a, b);
  });
  return middle;
}
