import { vectorLength } from "./arc.js";
import { type BoxIndex, indexBoxes, searchBoxes } from "./boxes.js";
import { alongSegment, boxOfSegment, bulgeBetween, type Segment } from "./segment.js";
import { tolerance } from "./tolerance.js";
import { sharedPlaces } from "./touching.js";
import { Weld } from "./weld.js";

/**
 * Segments cut so that two of them share nothing but ends, and what lay on one another made one. Piece i runs from place
 * `from[i]` to `to[i]` (from < to); `times0` and `times1` count how often each side's loops run along it that way, less
 * the times they run back; `onward` and `back` are the first segments found each way, -1 for none.
 */
export type Pieces = {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly from: number[];
  readonly to: number[];
  readonly bulge: number[];
  readonly times0: number[];
  readonly times1: number[];
  readonly onward: number[];
  readonly back: number[];
};

/** Cuts all segments where they meet. */
export function cutToPieces(segments: readonly Segment[]): Pieces {
  const weld = new Weld();
  const cuts: number[][] = segments.map((s) => [weld.add(s.x0, s.y0), weld.add(s.x1, s.y1)]);
  eachNeighbours(segments, (i, j) => {
    sharedPlaces(segments[i]!, segments[j]!, (x, y) => {
      const place = weld.add(x, y);
      cuts[i]!.push(place);
      cuts[j]!.push(place);
    });
  });
  const merge = new Merge(weld);
  segments.forEach((s, i) => {
    const places = inOrder(s, cuts[i]!, weld);
    for (let k = 0; k + 1 < places.length; k++) merge.add(s, i, places[k]!, places[k + 1]!);
  });
  return merge.pieces;
}

/** Calls back once with each pair of segments whose boxes touch. */
export function eachNeighbours(segments: readonly Segment[], visit: (i: number, j: number) => void): void {
  const boxes = new Float64Array(segments.length * 4);
  segments.forEach((s, i) => {
    boxOfSegment(s, tolerance.samePoint, boxes, i * 4);
  });
  if (segments.length <= 24) {
    eachPairPlainly(boxes, segments.length, visit);
    return;
  }
  const index: BoxIndex = indexBoxes(boxes);
  for (let i = 0; i < segments.length; i++) {
    const b = i * 4;
    searchBoxes(index, boxes[b]!, boxes[b + 1]!, boxes[b + 2]!, boxes[b + 3]!, (j) => {
      if (j > i) visit(i, j);
    });
  }
}

function eachPairPlainly(b: Float64Array, n: number, visit: (i: number, j: number) => void): void {
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const p = i * 4;
      const q = j * 4;
      if (b[p]! <= b[q + 2]! && b[q]! <= b[p + 2]! && b[p + 1]! <= b[q + 3]! && b[q + 1]! <= b[p + 3]!) visit(i, j);
    }
  }
}

/** The places on a segment from its start to its end, each once; none where both ends are one place. */
function inOrder(s: Segment, cuts: readonly number[], weld: Weld): readonly number[] {
  const first = cuts[0]!;
  const last = cuts[1]!;
  if (first === last) return [];
  if (cuts.length === 2) return cuts;
  const places = [first];
  const along = [Number.NEGATIVE_INFINITY];
  for (let i = 2; i < cuts.length; i++) {
    const cut = cuts[i]!;
    if (cut === last || places.includes(cut)) continue;
    const at = alongSegment(s, weld.xs[cut]!, weld.ys[cut]!);
    let k = places.length;
    while (along[k - 1]! > at) k--;
    places.splice(k, 0, cut);
    along.splice(k, 0, at);
  }
  places.push(last);
  return places;
}

/** Gathers pieces; one that joins the same places with the same bow, but for noise, is counted into the one there. */
class Merge {
  readonly pieces: Pieces;
  /** By place the last piece that starts there, by piece the one before it from the same place, -1 for none. */
  private readonly latest: Int32Array;
  private readonly before: number[] = [];

  constructor(private readonly weld: Weld) {
    const { xs, ys } = weld;
    this.pieces = { xs, ys, from: [], to: [], bulge: [], times0: [], times1: [], onward: [], back: [] };
    this.latest = new Int32Array(xs.length).fill(-1);
  }

  add(s: Segment, index: number, a: number, b: number): void {
    const { xs, ys } = this.weld;
    const whole = xs[a] === s.x0 && ys[a] === s.y0 && xs[b] === s.x1 && ys[b] === s.y1;
    const bulge = whole ? s.bulge : bulgeBetween(s, xs[a]!, ys[a]!, xs[b]!, ys[b]!);
    const onward = a < b;
    const at = onward ? this.find(a, b, bulge) : this.find(b, a, -bulge);
    const p = this.pieces;
    if (s.side === 0) p.times0[at]! += onward ? 1 : -1;
    else p.times1[at]! += onward ? 1 : -1;
    if (onward && p.onward[at] === -1) p.onward[at] = index;
    if (!onward && p.back[at] === -1) p.back[at] = index;
  }

  private find(from: number, to: number, bulge: number): number {
    const p = this.pieces;
    const reach = (2 * tolerance.samePoint) / this.chord(from, to);
    for (let i = this.latest[from]!; i >= 0; i = this.before[i]!) {
      if (p.to[i] === to && Math.abs(p.bulge[i]! - bulge) <= reach) return i;
    }
    const at = p.from.length;
    this.before.push(this.latest[from]!);
    this.latest[from] = at;
    p.from.push(from);
    p.to.push(to);
    p.bulge.push(bulge);
    p.times0.push(0);
    p.times1.push(0);
    p.onward.push(-1);
    p.back.push(-1);
    return at;
  }

  private chord(from: number, to: number): number {
    return vectorLength(this.weld.xs[to]! - this.weld.xs[from]!, this.weld.ys[to]! - this.weld.ys[from]!);
  }
}
