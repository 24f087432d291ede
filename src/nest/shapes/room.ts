import type { NestStock } from "../engine.js";

/** Where grown shapes may lie on a sheet, from its corner, mm: half a gap of each may reach over the trim. */
export function roomOf(row: NestStock, half: number): readonly [x0: number, y0: number, x1: number, y1: number] {
  const { length, width, trim } = row;
  return [trim - half, trim - half, length - trim + half, width - trim + half];
}
