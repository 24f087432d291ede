import { runLength, type Shape } from "./shape.js";

/** Runs of the first shape that reach into the common box; grown where a shape has more, never shared out. */
let near = new Int32Array(512);

/**
 * Whether two shapes have a point in common, the second `dx, dy` away from the first. Exact but for noise: shapes are
 * drawn in by a hair, so that what only touches does not meet, and any touch counts.
 *
 * Method:   runs of edges that reach into the common box are tested against each other by their boxes, then edge by
 *           edge; where none cross, the shapes meet only if a whole loop of one lies within the material of the other,
 *           which one point tells. In one piece, since numbers handed from function to function cost more here than what
 *           is done with them.
 */
export function collide(a: Shape, b: Shape, dx: number, dy: number): boolean {
  const x0 = Math.max(a.x0, b.x0 + dx);
  const y0 = Math.max(a.y0, b.y0 + dy);
  const x1 = Math.min(a.x1, b.x1 + dx);
  const y1 = Math.min(a.y1, b.y1 + dy);
  if (x0 > x1 || y0 > y1) return false;
  const { edges: own, runs } = a;
  const { edges: other, runs: others } = b;
  if (near.length < runs.length / 4) near = new Int32Array(runs.length);
  let count = 0;
  for (let k = 0; k < runs.length; k += 4)
    if (runs[k]! <= x1 && runs[k + 1]! <= y1 && runs[k + 2]! >= x0 && runs[k + 3]! >= y0) near[count++] = k;
  for (let m = 0; count > 0 && m < others.length; m += 4) {
    const rx0 = others[m]! + dx;
    const ry0 = others[m + 1]! + dy;
    const rx1 = others[m + 2]! + dx;
    const ry1 = others[m + 3]! + dy;
    if (rx0 > x1 || ry0 > y1 || rx1 < x0 || ry1 < y0) continue;
    const first = 2 * m * runLength;
    const last = Math.min(other.length, first + 8 * runLength);
    for (let n = 0; n < count; n++) {
      const k = near[n]!;
      if (runs[k]! > rx1 || runs[k + 1]! > ry1 || runs[k + 2]! < rx0 || runs[k + 3]! < ry0) continue;
      const start = 2 * k * runLength;
      const end = Math.min(own.length, start + 8 * runLength);
      for (let f = first; f < last; f += 8) {
        const fx0 = other[f + 4]! + dx;
        const fy0 = other[f + 5]! + dy;
        const fx1 = other[f + 6]! + dx;
        const fy1 = other[f + 7]! + dy;
        if (fx0 > x1 || fy0 > y1 || fx1 < x0 || fy1 < y0) continue;
        const px = other[f]! + dx;
        const py = other[f + 1]! + dy;
        const cx = other[f + 2]! + dx - px;
        const cy = other[f + 3]! + dy - py;
        for (let i = start; i < end; i += 8) {
          if (own[i + 4]! > fx1 || own[i + 5]! > fy1 || own[i + 6]! < fx0 || own[i + 7]! < fy0) continue;
          const ax = own[i]! - px;
          const ay = own[i + 1]! - py;
          const bx = own[i + 2]! - px;
          const by = own[i + 3]! - py;
          // both ends of the first edge on one side of the second, or the other way round: no crossing
          if ((cx * ay - cy * ax) * (cx * by - cy * bx) > 0) continue;
          const ex = bx - ax;
          const ey = by - ay;
          if ((ey * ax - ex * ay) * (ex * (cy - ay) - ey * (cx - ax)) <= 0) return true;
        }
      }
    }
  }
  return holdsLoop(a, b, dx, dy) || holdsLoop(b, a, -dx, -dy);
}

/** Where no edges cross: whether a whole loop of the second, be it a hole's, lies in the material of the first. */
function holdsLoop(a: Shape, b: Shape, dx: number, dy: number): boolean {
  const { loops } = b;
  for (let k = 0; k < loops.length; k += 6)
    if (
      a.x0 <= loops[k + 2]! + dx &&
      a.y0 <= loops[k + 3]! + dy &&
      a.x1 >= loops[k + 4]! + dx &&
      a.y1 >= loops[k + 5]! + dy &&
      contains(a.edges, loops[k]! + dx, loops[k + 1]! + dy)
    )
      return true;
  return false;
}

/** Whether a point lies in the material, holes counted out: an odd number of edges to its right. */
function contains(edges: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let e = 0; e < edges.length; e += 8) {
    if (edges[e + 5]! > y || edges[e + 7]! <= y) continue;
    const ax = edges[e]!;
    const ay = edges[e + 1]!;
    if (x < ((edges[e + 2]! - ax) * (y - ay)) / (edges[e + 3]! - ay) + ax) inside = !inside;
  }
  return inside;
}
