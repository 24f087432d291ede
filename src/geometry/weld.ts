import { tolerance } from "./tolerance.js";

const reach = tolerance.samePoint;
const cell = 16 * reach;

/**
 * Places that are one but for noise get one number. The first to come stays where it is and the others join it, so that
 * corners as given, welded first, keep their exact coordinates. A grid of cells finds the neighbours.
 */
export class Weld {
  readonly xs: number[] = [];
  readonly ys: number[] = [];
  /** By cell the last place put in it, by place the one put in its cell before, -1 for none. */
  private readonly cells = new Map<number, number>();
  private readonly before: number[] = [];

  /** The number of the place at (x, y), a new one where none is near. */
  add(x: number, y: number): number {
    const cx = Math.floor(x / cell);
    const cy = Math.floor(y / cell);
    const found = this.near(cx, cy, x, y) ?? this.acrossBorder(cx, cy, x, y);
    if (found !== undefined) return found;
    const id = this.xs.length;
    this.xs.push(x);
    this.ys.push(y);
    const key = keyOf(cx, cy);
    this.before.push(this.cells.get(key) ?? -1);
    this.cells.set(key, id);
    return id;
  }

  private acrossBorder(cx: number, cy: number, x: number, y: number): number | undefined {
    const dx = beyond(x - cx * cell);
    const dy = beyond(y - cy * cell);
    if (dx === 0 && dy === 0) return undefined;
    const beside = dx === 0 ? undefined : this.near(cx + dx, cy, x, y);
    const above = dy === 0 ? undefined : this.near(cx, cy + dy, x, y);
    return beside ?? above ?? (dx === 0 || dy === 0 ? undefined : this.near(cx + dx, cy + dy, x, y));
  }

  private near(cx: number, cy: number, x: number, y: number): number | undefined {
    let found: number | undefined;
    for (let id = this.cells.get(keyOf(cx, cy)) ?? -1; id >= 0; id = this.before[id]!) {
      const dx = this.xs[id]! - x;
      const dy = this.ys[id]! - y;
      if (dx * dx + dy * dy <= reach * reach) found = id;
    }
    return found;
  }
}

/** Which neighbour cell the reach around a place touches. */
function beyond(inCell: number): -1 | 0 | 1 {
  if (inCell <= reach) return -1;
  return inCell >= cell - reach ? 1 : 0;
}

/** Two cells may share a key: what is found there is measured anyway. */
function keyOf(cx: number, cy: number): number {
  return (Math.imul(cx | 0, 73856093) ^ Math.imul(cy | 0, 19349663)) | 0;
}
