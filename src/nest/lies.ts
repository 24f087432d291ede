import { extentsOf } from "../geometry/measure.js";
import { tolerance } from "../geometry/tolerance.js";
import type { NestItem, NestStock } from "./engine.js";
import { layBlank } from "./placed.js";

/** A way in which an item may lie, and the size of its extents then. mm, rad. */
export type Lie = { readonly turn: number; readonly w: number; readonly h: number };

/** Every way in which an item may lie; of turns that give the same size only the first. */
export function liesOf(item: Pick<NestItem, "shape" | "turns">): readonly Lie[] {
  const lies = item.turns.map((turn): Lie => {
    const { min, max } = extentsOf(layBlank(item.shape, turn, false));
    return { turn, w: max.x - min.x, h: max.y - min.y };
  });
  return lies.filter((lie, i) => lies.findIndex((other) => sameSize(lie, other)) === i);
}

/** By how much an item is too long or too wide for a sheet in its best lie; 0 or less if it fits. mm. */
export function excessOf(lies: readonly Lie[], row: Pick<NestStock, "length" | "width" | "trim">): number {
  const length = row.length - 2 * row.trim;
  const width = row.width - 2 * row.trim;
  return Math.min(...lies.map((lie) => Math.max(lie.w - length, lie.h - width)));
}

function sameSize(a: Lie, b: Lie): boolean {
  return Math.abs(a.w - b.w) <= tolerance.samePoint && Math.abs(a.h - b.h) <= tolerance.samePoint;
}
