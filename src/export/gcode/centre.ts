import { type Grid, onGrid, stepOf } from "./grid.js";

type Place = readonly [number, number, ...(readonly number[])];

/** How far the two radii of an arc may differ, in the unit of the program: an interpreter refuses more.
 *  Source: RS274/NGC interpreter of NISTIR 6556, TOLERANCE_MM and TOLERANCE_INCH. */
export const mostApart = { mm: 0.002, inch: 0.0002 } as const;

/**
 * I and J of an arc of no more than half a turn between two places of the grid, themselves on the grid: from the ends as
 * they are written, never as they were meant. Of the grid's places about the true centre, that which is most nearly as
 * far from the one end as from the other; none where even that is off by more than an interpreter takes.
 */
export function centreOffset(
  grid: Grid,
  from: Place,
  to: Place,
  bulge: number,
): readonly [i: number, j: number] | undefined {
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const i = (to[0] - from[0]) / 2 - (to[1] - from[1]) * toCentre;
  const j = (to[1] - from[1]) / 2 + (to[0] - from[0]) * toCentre;
  const step = stepOf(grid);
  const nearby = (value: number) => [0, -1, 1].map((steps) => onGrid(grid, value + steps * step));
  const offsets = nearby(i).flatMap((x) => nearby(j).map((y) => [x, y] as const));
  const best = offsets
    .map((offset) => ({ offset, apart: radiiApart(from, to, offset), off: Math.hypot(offset[0] - i, offset[1] - j) }))
    .reduce((a, b) => (b.apart + b.off < a.apart + a.off ? b : a));
  return best.apart < mostApart[grid.unit] ? best.offset : undefined;
}

/** How much farther the centre is from one end than from the other. */
export function radiiApart(from: Place, to: Place, [i, j]: readonly [number, number]): number {
  return Math.abs(Math.hypot(i, j) - Math.hypot(to[0] - from[0] - i, to[1] - from[1] - j));
}
