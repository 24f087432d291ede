import { litres } from "../input/finding.js";
import { type Show, showQuantity } from "../input/show.js";
import type { Air } from "./piece.js";

/** The net volume of a chamber, L. */
export const netLitres = ({ terms }: Pick<Air, "terms">): number => terms.reduce((sum, term) => sum + term.litres, 0);

/** A chamber's volume as one reads it: "20.01 L net, 20 L wanted, ±0.16 L at worst, ±0.09 L likely". */
export function volumeInWords(air: Air, show: Show): string {
  const shown = (value: number) => showQuantity(litres(value), show);
  const { spread, wantedL } = air;
  return [
    `${shown(netLitres(air))} net`,
    ...(wantedL === undefined ? [] : [`${shown(wantedL)} wanted`]),
    ...(spread ? [`±${shown(spread.worst)} at worst`, `±${shown(spread.likely)} likely`] : []),
  ].join(", ");
}
