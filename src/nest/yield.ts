import { areaOf, areaOfRegion } from "../geometry/measure.js";
import type { Layout } from "../model/build.js";
import type { Part } from "../model/part.js";
import { boardOf } from "../shop/clearArea.js";

/** What becomes parts, of what is cut into. mm2; `share` from 0 to 1, 0 where there are no sheets. */
export type Yield = { readonly parts: number; readonly sheets: number; readonly share: number };

/**
 * Over all sheets and offcuts of a layout, or of some of them. Openings and what is trimmed off count as waste. What is
 * sawn off a sheet and goes on as another is board of the first.
 */
export function yieldOf({ sheets }: Pick<Layout, "sheets">, parts: readonly Part[]): Yield {
  const blanks = new Map(parts.map((part) => [part.id, areaOfRegion(part.blank)]));
  const placed = sheets.flatMap((sheet) => sheet.placed.map((one) => blanks.get(one.part) ?? 0));
  const used = sum(placed);
  const cut = sum(sheets.filter(({ restOf }) => restOf === undefined).map((sheet) => areaOf(boardOf(sheet))));
  return { parts: used, sheets: cut, share: cut > 0 ? used / cut : 0 };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
