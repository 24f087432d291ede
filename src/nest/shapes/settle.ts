import type { Shape } from "./shape.js";

/** Parts pressed together end this near to contact, mm; an arc's polygon adds a hundredth at most. */
export const contact = 0.004;

/** Whether a shape may lie with its origin at a place. */
export type IsClear = (x: number, y: number) => boolean;

/**
 * A shape slid left and down from a place where it is clear, by steps of `from` and ever smaller ones, each as often as
 * it goes: until it touches, or lies in the room's corner. mm.
 */
export function settled(
  shape: Shape,
  at: { readonly x: number; readonly y: number },
  corner: readonly [x0: number, y0: number],
  from: number,
  isClear: IsClear,
): { readonly x: number; readonly y: number } {
  let { x, y } = at;
  const [x0, y0] = corner;
  for (let step = from; step > contact / 2; step /= 2)
    for (let moved = true; moved; ) {
      const left = Math.max(x0 - shape.x0, x - step);
      moved = left < x && isClear(left, y);
      if (moved) x = left;
      const down = Math.max(y0 - shape.y0, y - step);
      const lower = down < y && isClear(x, down);
      if (lower) y = down;
      moved ||= lower;
    }
  return { x, y };
}
