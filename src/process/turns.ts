import type { Part } from "../model/part.js";
import type { Method } from "../model/shop.js";

const quarters: Readonly<Record<Method, readonly number[]>> = {
  cnc: [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2],
  hand: [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2],
  // a rectangle turned by half a turn is the same rectangle
  saw: [0, Math.PI / 2],
};

/**
 * The turns in which a part may lie on a sheet, rad. Where the board has a grain, along the sheet's length, and the part
 * says which way it must run: only those that keep it. `backUp`: the part lies mirrored, and its grain with it.
 */
export function turnsOf(part: Part, method: Method, boardHasGrain: boolean, backUp: boolean): readonly number[] {
  if (!boardHasGrain || part.grain === undefined) return quarters[method];
  const grain = backUp ? -part.grain : part.grain;
  const kept = quarters[method].filter((turn) => Math.abs(Math.sin(grain + turn)) < 1e-9);
  if (kept.length > 0) return kept;
  const along = ((-grain % Math.PI) + Math.PI) % Math.PI;
  return [along, along + Math.PI];
}
