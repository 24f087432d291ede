import { extentsOf } from "../geometry/measure.js";
import type { NestedSheet, Process } from "../model/build.js";
import type { Part } from "../model/part.js";
import { largestClear, type Rectangle } from "./clearRectangle.js";
import { layBlank } from "./placed.js";

/**
 * The largest rectangle of a sheet that no part's extents reach into, its gap kept, inside the trim: what goes back to
 * the rack. Undefined where nothing is left.
 */
export function remainderOf(sheet: NestedSheet, parts: readonly Part[], process: Process): Rectangle | undefined {
  const taken = sheet.placed.map((placed) => {
    const part = parts.find((each) => each.id === placed.part)!;
    const gap = process.parts.find((each) => each.part === placed.part)?.gap ?? 0;
    const { min, max } = extentsOf(layBlank(part.blank, placed.turn, placed.backUp));
    return {
      x0: placed.x - gap,
      y0: placed.y - gap,
      x1: placed.x + max.x - min.x + gap,
      y1: placed.y + max.y - min.y + gap,
    };
  });
  const { trim } = sheet;
  const usable = { x0: trim, y0: trim, x1: sheet.length - trim, y1: sheet.width - trim };
  return largestClear(usable, taken);
}
