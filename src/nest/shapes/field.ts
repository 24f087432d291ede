import { collide } from "./collide.js";
import type { Shape } from "./shape.js";

/**
 * How far two shapes must move apart, for every place of the second relative to the first, on a grid: positive where
 * they collide (the way to the nearest place where they do not), negative where they are clear (the way to the nearest
 * place where they would). Holes and notches are clear where the other fits in.
 *
 * It holds for both shapes turned together as well. Between the grid's points it is interpolated: a guide, never a proof.
 */
export type Field = {
  readonly values: Float32Array;
  /** Points along x and y. */
  readonly nx: number;
  readonly ny: number;
  readonly x0: number;
  readonly y0: number;
  /** Points per mm. */
  readonly perX: number;
  readonly perY: number;
  /** Beyond this distance from zero the sign is sure. */
  readonly doubt: number;
};

/**
 * Method:   collision is decided by the edges at every third point, and at those between where they differ; between
 *           neighbours that differ the border is found by halving; every point then looks for its nearest border place,
 *           which neighbours pass on to each other in two sweeps (Danielsson, Computer Graphics and Image Processing 14, 1980).
 */
export function fieldOf(a: Shape, b: Shape, steps: number): Field {
  const w = a.x1 - a.x0 + b.x1 - b.x0;
  const h = a.y1 - a.y0 + b.y1 - b.y0;
  const stepX = w / (steps - 2);
  const stepY = h / (steps - 2);
  const nx = steps + 1;
  const grid = { nx, ny: nx, x0: a.x0 - b.x1 - stepX, y0: a.y0 - b.y1 - stepY, stepX, stepY };
  const hits = new Uint8Array(nx * nx);
  fillHits(a, b, grid, hits);
  const nearest = new Int32Array(nx * nx).fill(-1);
  const border = borderOf(a, b, grid, hits, nearest);
  spread(grid, border, nearest);
  const values = new Float32Array(nx * nx);
  for (let k = 0; k < values.length; k++) {
    const distance = nearest[k]! < 0 ? Math.min(stepX, stepY) : Math.sqrt(squaredTo(grid, border, k, nearest[k]!));
    values[k] = hits[k] === 1 ? distance : -distance;
  }
  return {
    values,
    nx,
    ny: nx,
    x0: grid.x0,
    y0: grid.y0,
    perX: 1 / stepX,
    perY: 1 / stepY,
    doubt: 0.75 * Math.hypot(stepX, stepY),
  };
}

type Grid = {
  readonly nx: number;
  readonly ny: number;
  readonly x0: number;
  readonly y0: number;
  readonly stepX: number;
  readonly stepY: number;
};

/** Places on the border between clear and colliding. */
type Border = { readonly xs: number[]; readonly ys: number[] };

const halvings = 4;

/** Every so many points along x and y are tested; those between only where the corners of their square differ. */
const stride = 3;

function fillHits(a: Shape, b: Shape, { nx, x0, y0, stepX, stepY }: Grid, hits: Uint8Array): void {
  const test = (i: number, j: number) => {
    hits[j * nx + i] = collide(a, b, x0 + i * stepX, y0 + j * stepY) ? 1 : 0;
  };
  for (let j = 0; j < nx; j += stride) for (let i = 0; i < nx; i += stride) test(i, j);
  for (let j = 0; j + stride < nx; j += stride)
    for (let i = 0; i + stride < nx; i += stride) {
      const k = j * nx + i;
      const sum = hits[k]! + hits[k + stride]! + hits[k + stride * nx]! + hits[k + stride * nx + stride]!;
      for (let v = 0; v <= stride; v++)
        for (let u = 0; u <= stride; u++)
          if (sum === 4) hits[k + v * nx + u] = 1;
          else if (sum > 0 && (u % stride !== 0 || v % stride !== 0)) test(i + u, j + v);
    }
}

/** Finds the border between neighbouring grid points that differ; `nearest` gets the places next to a point. */
function borderOf(a: Shape, b: Shape, grid: Grid, hits: Uint8Array, nearest: Int32Array): Border {
  const { nx, ny, x0, y0, stepX, stepY } = grid;
  const border: Border = { xs: [], ys: [] };
  const look = (i: number, j: number, di: number, dj: number) => {
    const from = j * nx + i;
    const to = from + dj * nx + di;
    if (hits[from] === hits[to]) return;
    let low = 0;
    let high = 1;
    for (let n = 0; n < halvings; n++) {
      const t = (low + high) / 2;
      if (collide(a, b, x0 + (i + t * di) * stepX, y0 + (j + t * dj) * stepY) === (hits[from] === 1)) low = t;
      else high = t;
    }
    const t = (low + high) / 2;
    border.xs.push(x0 + (i + t * di) * stepX);
    border.ys.push(y0 + (j + t * dj) * stepY);
    nearer(grid, border, nearest, from, border.xs.length - 1);
    nearer(grid, border, nearest, to, border.xs.length - 1);
  };
  for (let j = 0; j + 1 < ny; j++)
    for (let i = 0; i + 1 < nx; i++) {
      look(i, j, 1, 0);
      look(i, j, 0, 1);
    }
  return border;
}

/** Gives a point this border place if it is nearer than the one it has. */
function nearer(grid: Grid, border: Border, nearest: Int32Array, point: number, place: number): void {
  const now = nearest[point]!;
  if (place < 0 || now === place) return;
  if (now < 0 || squaredTo(grid, border, point, place) < squaredTo(grid, border, point, now)) nearest[point] = place;
}

function squaredTo({ nx, x0, y0, stepX, stepY }: Grid, { xs, ys }: Border, point: number, place: number): number {
  const j = Math.floor(point / nx);
  const x = x0 + (point - j * nx) * stepX - xs[place]!;
  const y = y0 + j * stepY - ys[place]!;
  return x * x + y * y;
}

/** Passes the nearest places on: down the grid and up again, in each row there and back. */
function spread(grid: Grid, border: Border, nearest: Int32Array): void {
  const { nx, ny } = grid;
  for (let j = 1; j + 1 < ny; j++) {
    const row = j * nx;
    for (let k = row + 1; k < row + nx - 1; k++) {
      nearer(grid, border, nearest, k, nearest[k - 1]!);
      nearer(grid, border, nearest, k, nearest[k - nx - 1]!);
      nearer(grid, border, nearest, k, nearest[k - nx]!);
      nearer(grid, border, nearest, k, nearest[k - nx + 1]!);
    }
    for (let k = row + nx - 2; k > row; k--) nearer(grid, border, nearest, k, nearest[k + 1]!);
  }
  for (let j = ny - 2; j > 0; j--) {
    const row = j * nx;
    for (let k = row + nx - 2; k > row; k--) {
      nearer(grid, border, nearest, k, nearest[k + 1]!);
      nearer(grid, border, nearest, k, nearest[k + nx + 1]!);
      nearer(grid, border, nearest, k, nearest[k + nx]!);
      nearer(grid, border, nearest, k, nearest[k + nx - 1]!);
    }
    for (let k = row + 1; k < row + nx - 1; k++) nearer(grid, border, nearest, k, nearest[k - 1]!);
  }
}

/** The field's value at a place, positive where it says that the shapes collide; far below 0 outside of it. */
export function fieldAt(field: Field, dx: number, dy: number): number {
  const u = (dx - field.x0) * field.perX;
  const v = (dy - field.y0) * field.perY;
  const i = Math.floor(u);
  const j = Math.floor(v);
  if (!(i >= 0 && j >= 0 && i + 1 < field.nx && j + 1 < field.ny)) return Number.NEGATIVE_INFINITY;
  const { values, nx } = field;
  const k = j * nx + i;
  const s = u - i;
  const t = v - j;
  const low = values[k]! + s * (values[k + 1]! - values[k]!);
  const high = values[k + nx]! + s * (values[k + nx + 1]! - values[k + nx]!);
  return low + t * (high - low);
}
