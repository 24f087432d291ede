import { areaOf } from "../geometry/measure.js";
import type { NestStock } from "./engine.js";

/**
 * What the sheets that a layout takes are worth, the first that differs deciding, less being better: their cost, sheets
 * bought, board cut into (so that offcuts go before whole sheets of the rack, mm2), pieces of it.
 */
export function stockWorth(rows: readonly NestStock[]): readonly number[] {
  return [
    rows.reduce((sum, row) => sum + row.cost, 0),
    rows.filter((row) => row.cost > 0).length,
    rows.reduce((sum, row) => sum + boardArea(row), 0),
    rows.length,
  ];
}

const boardArea = ({ length, outline, width }: NestStock): number => (outline ? areaOf(outline) : length * width);
