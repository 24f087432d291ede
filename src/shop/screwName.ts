import { parseLength } from "../input/length.js";
import { formatNumber } from "../input/number.js";
import { showLength } from "../input/show.js";

/** A screw as it is bought: the shop's row and its length, mm. */
export type SplitScrew = { readonly row: string; readonly length: number };

/**
 * Takes "4.0 x 25" or "#8 x 1 1/4" apart. A length without a unit is millimetres behind a metric diameter and inches
 * behind a gauge. Undefined where the text has no such form.
 */
export function splitScrew(text: string): SplitScrew | undefined {
  const match = /^\s*(.+?)\s*[x\u00d7]\s*(.+?)\s*$/i.exec(text);
  const [, row = "", written = ""] = match ?? [];
  const length = match === null ? undefined : parseLength(written, isGauge(row) ? "in" : "mm");
  return length === undefined || length <= 0 ? undefined : { row, length };
}

/** The name of a screw as it is asked for over the counter: "4.0 x 25", `#8 x 1 1/4"`. */
export function screwName(row: string, length: number): string {
  return `${row} x ${isGauge(row) ? showLength(length, { unit: "in", denominator: 16 }) : formatNumber(length, 1)}`;
}

function isGauge(row: string): boolean {
  return row.startsWith("#");
}
