import { areaOfLoop, areaOfLoops, boxOfLoops, drawnIn, hullOf, type Loop, turnLoops } from "./loops.js";

/**
 * A part in one of its turns, ready for the search: plain typed arrays about a reference point of its own.
 *
 * `edges` holds eight numbers an edge: both ends, then its box. `runs` are boxes of a few edges in a row, four numbers
 * each, so that most edges are never looked at.
 */
export type Shape = {
  /** Parts of one form are alike but for their turns. */
  readonly form: number;
  /** Its place among all shapes. */
  readonly number: number;
  readonly turn: number;
  readonly cos: number;
  readonly sin: number;
  readonly edges: Float64Array;
  readonly runs: Float64Array;
  /** Six numbers a loop: one of its corners, then its box. */
  readonly loops: Float64Array;
  /** Box of the edges. */
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** How much room it needs to get out of another's way: the fourth root of its hull's area. */
  readonly bulk: number;
  /** Area of the material. */
  readonly area: number;
};

/** Edges in a run. */
export const runLength = 8;

/** The loops of a part turned by `turn`. What touches does not collide, up to `hair`; mm, rad. */
export function shapeOf(form: number, number: number, loops: readonly Loop[], turn: number, hair: number): Shape {
  const fine = turnLoops(drawnIn(loops, hair), turn);
  const edges = edgesOf(fine);
  const hull = areaOfLoop(hullOf(fine[0]!));
  return {
    form,
    number,
    turn,
    cos: Math.cos(turn),
    sin: Math.sin(turn),
    edges,
    runs: runsOf(edges),
    loops: Float64Array.from(fine.flatMap((loop) => loopMarks(loop))),
    ...boxOfLoops(fine),
    bulk: Math.sqrt(Math.sqrt(hull)),
    area: areaOfLoops(fine),
  };
}

function loopMarks(loop: Loop): number[] {
  const { x0, y0, x1, y1 } = boxOfLoops([loop]);
  return [loop[0]!.x, loop[0]!.y, x0, y0, x1, y1];
}

function edgesOf(loops: readonly Loop[]): Float64Array {
  const edges = new Float64Array(8 * loops.reduce((sum, loop) => sum + loop.length, 0));
  let e = 0;
  for (const loop of loops)
    for (let i = 0; i < loop.length; i++, e += 8) {
      const a = loop[i]!;
      const b = loop[i + 1 < loop.length ? i + 1 : 0]!;
      edges[e] = a.x;
      edges[e + 1] = a.y;
      edges[e + 2] = b.x;
      edges[e + 3] = b.y;
      edges[e + 4] = Math.min(a.x, b.x);
      edges[e + 5] = Math.min(a.y, b.y);
      edges[e + 6] = Math.max(a.x, b.x);
      edges[e + 7] = Math.max(a.y, b.y);
    }
  return edges;
}

function runsOf(edges: Float64Array): Float64Array {
  const count = Math.ceil(edges.length / 8 / runLength);
  const runs = new Float64Array(count * 4);
  for (let k = 0; k < count; k++) {
    let x0 = Number.POSITIVE_INFINITY;
    let y0 = Number.POSITIVE_INFINITY;
    let x1 = Number.NEGATIVE_INFINITY;
    let y1 = Number.NEGATIVE_INFINITY;
    for (let e = k * runLength * 8; e < Math.min(edges.length, (k + 1) * runLength * 8); e += 8) {
      x0 = Math.min(x0, edges[e + 4]!);
      y0 = Math.min(y0, edges[e + 5]!);
      x1 = Math.max(x1, edges[e + 6]!);
      y1 = Math.max(y1, edges[e + 7]!);
    }
    runs.set([x0, y0, x1, y1], k * 4);
  }
  return runs;
}
