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

/** The terms that a chamber's volume is made of: "gross inside 21.57 L, 6 x block -0.17 L, driver -1.4 L". */
export const termsInWords = ({ terms }: Pick<Air, "terms">, show: Show): string =>
  alikeTogether(terms)
    .map((term) => `${term.what} ${showQuantity(litres(term.litres), show)}`)
    .join(", ");

/** "block 1", "block 2" ... become one term, "6 x block". */
function alikeTogether(terms: Air["terms"]): readonly { readonly what: string; readonly litres: number }[] {
  const groups = new Map<string, Air["terms"][number][]>();
  for (const term of terms) {
    const name = term.what.replace(/ \d+$/, "");
    groups.set(name, [...(groups.get(name) ?? []), term]);
  }
  return [...groups].map(([name, alike]) => ({
    what: alike.length === 1 ? alike[0]!.what : `${alike.length} x ${name}`,
    litres: alike.reduce((sum, term) => sum + term.litres, 0),
  }));
}
