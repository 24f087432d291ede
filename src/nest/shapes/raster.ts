import type { Shape } from "./shape.js";

/** A sheet, or a part's extents, as a grid of square cells: a bit each, 1 where something lies. Rows of 32-bit words. */
export type Raster = {
  /** Cells along x and y. */
  readonly nx: number;
  readonly ny: number;
  /** Words a row: one more than its cells need, so that a shifted row may be read beside it. */
  readonly words: number;
  readonly bits: Uint32Array;
  /** A cell's side, mm. */
  readonly cell: number;
};

export function emptyRaster(length: number, width: number, cell: number): Raster {
  const nx = Math.max(1, Math.ceil(length / cell));
  const ny = Math.max(1, Math.ceil(width / cell));
  const words = (nx >> 5) + 2;
  return { nx, ny, words, bits: new Uint32Array(words * ny), cell };
}

/** The cells that a shape reaches into with its extents' corner on the grid's corner. */
export function maskOf(shape: Shape, cell: number): Raster {
  const mask = emptyRaster(shape.x1 - shape.x0, shape.y1 - shape.y0, cell);
  cover(mask, shape, -shape.x0, -shape.y0);
  return mask;
}

/**
 * Marks every cell that a shape reaches into, shifted by `dx, dy`; what lies off the grid is left out.
 *
 * Method:   a cell that the material reaches into is either crossed by an edge, or its middle lies inside.
 */
export function cover(raster: Raster, shape: Shape, dx: number, dy: number): void {
  const { cell, ny } = raster;
  const { edges } = shape;
  const crossings: number[][] = Array.from({ length: ny }, () => []);
  for (let e = 0; e < edges.length; e += 8) {
    const ax = (edges[e]! + dx) / cell;
    const ay = (edges[e + 1]! + dy) / cell;
    const bx = (edges[e + 2]! + dx) / cell;
    const by = (edges[e + 3]! + dy) / cell;
    coverEdge(raster, ax, ay, bx, by);
    const [low, high] = ay < by ? [ay, by] : [by, ay];
    for (let row = Math.max(0, Math.ceil(low - 0.5)); row < ny && row + 0.5 < high; row++)
      crossings[row]!.push(ax + ((row + 0.5 - ay) * (bx - ax)) / (by - ay));
  }
  for (const [row, xs] of crossings.entries()) {
    xs.sort((a, b) => a - b);
    for (let k = 0; k + 1 < xs.length; k += 2)
      setCells(raster, row, Math.ceil(xs[k]! - 0.5), Math.floor(xs[k + 1]! - 0.5));
  }
}

/** Marks the cells an edge crosses, row by row. Ends in cells. */
function coverEdge(raster: Raster, ax: number, ay: number, bx: number, by: number): void {
  const slope = by === ay ? 0 : (bx - ax) / (by - ay);
  const last = Math.min(raster.ny - 1, Math.floor(Math.max(ay, by)));
  for (let row = Math.max(0, Math.floor(Math.min(ay, by))); row <= last; row++) {
    const from = by === ay ? ax : ax + slope * (Math.max(row, Math.min(ay, by)) - ay);
    const to = by === ay ? bx : ax + slope * (Math.min(row + 1, Math.max(ay, by)) - ay);
    setCells(raster, row, Math.floor(Math.min(from, to)), Math.floor(Math.max(from, to)));
  }
}

function setCells({ bits, nx, words }: Raster, row: number, from: number, to: number): void {
  const first = Math.max(0, from);
  const last = Math.min(nx - 1, to);
  for (let i = first; i <= last; ) {
    const k = row * words + (i >> 5);
    const end = Math.min(last, i | 31);
    const run = end - i + 1;
    bits[k] = bits[k]! | (run === 32 ? 0xffffffff : ((1 << run) - 1) << (i & 31));
    i = end + 1;
  }
}

/** The longest row of cells one above the other that are marked, or that are not, in each of some columns. */
export function longestRuns(raster: Raster, marked: boolean, runs: Int32Array, from: number, to: number): void {
  const { bits, ny, words } = raster;
  for (let i = from; i <= to; i++) {
    let longest = 0;
    let run = 0;
    for (let j = 0, k = i >> 5; j < ny; j++, k += words) {
      run = ((bits[k]! >>> (i & 31)) & 1) === (marked ? 1 : 0) ? run + 1 : 0;
      if (run > longest) longest = run;
    }
    runs[i] = longest;
  }
}

/** A sheet's raster, and the longest clear run of each column: columns without room are then passed over at once. */
export type Ground = { readonly raster: Raster; readonly clear: Int32Array };
/** A part's raster, and the longest marked run of each column. */
export type Stamp = { readonly mask: Raster; readonly runs: Int32Array };

export function groundOf(raster: Raster): Ground {
  const clear = new Int32Array(raster.nx);
  longestRuns(raster, false, clear, 0, raster.nx - 1);
  return { raster, clear };
}

export function stampOf(shape: Shape, cell: number): Stamp {
  const mask = maskOf(shape, cell);
  const runs = new Int32Array(mask.nx);
  longestRuns(mask, true, runs, 0, mask.nx - 1);
  return { mask, runs };
}

/** Marks a shape that is laid on the ground. */
export function occupy({ raster, clear }: Ground, shape: Shape, dx: number, dy: number): void {
  cover(raster, shape, dx, dy);
  const from = Math.max(0, Math.floor((shape.x0 + dx) / raster.cell));
  const to = Math.min(raster.nx - 1, Math.floor((shape.x1 + dx) / raster.cell));
  longestRuns(raster, false, clear, from, to);
}

/** A node of the grid, from its corner. */
export type Node = { readonly i: number; readonly j: number };

/**
 * The first node, by columns from the left and upward in each, at which a stamp meets nothing that is marked.
 *
 * `across`, `up`: the last node along x and y at which the shape itself still lies on the sheet.
 * `from`: the column to begin with.
 */
export function firstClear(ground: Ground, stamp: Stamp, across: number, up: number, from: number): Node | undefined {
  let hint = 0;
  for (let i = from; i <= across; i++) {
    if (!mayHold(ground, stamp, i)) continue;
    for (let j = 0; j <= up; j++) {
      const hit = meetingRow(ground.raster, stamp.mask, i, j, hint);
      if (hit < 0) return { i, j };
      hint = hit;
    }
  }
  return undefined;
}

function mayHold({ clear }: Ground, { runs }: Stamp, i: number): boolean {
  for (let c = 0; c < runs.length && i + c < clear.length; c++) if (clear[i + c]! < runs[c]!) return false;
  return true;
}

/** A row of the mask that meets something with its corner at a node, the likely one tried first; -1 if none does. */
function meetingRow(sheet: Raster, mask: Raster, i: number, j: number, hint: number): number {
  if (meets(sheet, mask, i, j, hint)) return hint;
  const rows = Math.min(mask.ny, sheet.ny - j);
  for (let row = 0; row < rows; row++) if (meets(sheet, mask, i, j, row)) return row;
  return -1;
}

function meets(sheet: Raster, mask: Raster, i: number, j: number, row: number): boolean {
  if (j + row >= sheet.ny) return false;
  const shift = i & 31;
  let k = (j + row) * sheet.words + (i >> 5);
  const end = (j + row + 1) * sheet.words;
  for (let m = row * mask.words; m < (row + 1) * mask.words && k < end; m++, k++) {
    const word = mask.bits[m]!;
    if (word === 0) continue;
    if (((word << shift) & sheet.bits[k]!) !== 0) return true;
    if (shift > 0 && k + 1 < end && ((word >>> (32 - shift)) & sheet.bits[k + 1]!) !== 0) return true;
  }
  return false;
}
