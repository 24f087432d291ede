import type { Quantity } from "./finding.js";
import { formatNumber } from "./number.js";

/** How lengths are shown. It changes nothing that is cut. */
export type Show = { readonly unit: "mm" } | { readonly unit: "in"; readonly denominator: 8 | 16 | 32 | 64 };

const litresInCubicFoot = 28.316846592; // exact: 0.3048 m cubed
const kilogramsInPound = 0.45359237; // exact by definition

/**
 * A length as it is read at the bench: millimetres bare, with at most `decimals` places; inches as a whole number and
 * a reduced fraction with the sign, `11 5/8"`.
 */
export function showLength(mm: number, show: Show, decimals = 1): string {
  return show.unit === "mm" ? formatNumber(mm, decimals) : showInches(mm, show.denominator);
}

function showInches(mm: number, denominator: number): string {
  const steps = Number(formatNumber((mm / 25.4) * denominator, 0));
  const size = Math.abs(steps);
  const whole = Math.floor(size / denominator);
  const [above, below] = reduced(size - whole * denominator, denominator);
  const written = above === 0 ? `${whole}` : whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
  return `${steps < 0 ? "-" : ""}${written}"`;
}

/** The denominators are powers of two, so halving is enough. */
function reduced(above: number, below: number): readonly [number, number] {
  return above !== 0 && above % 2 === 0 ? reduced(above / 2, below / 2) : [above, below];
}

/** A fact with its unit, in the reader's own system: litres or cubic feet, kilograms or pounds. */
export function showQuantity(q: Quantity, show: Show): string {
  switch (q.unit) {
    case "mm":
      return showWithUnit(q.value, show);
    case "rad":
      return `${formatNumber((q.value * 180) / Math.PI, 1)}°`;
    case "L":
      return show.unit === "mm"
        ? `${formatNumber(q.value, 2)} L`
        : `${formatNumber(q.value / litresInCubicFoot, 3)} ft3`;
    case "kg":
      return show.unit === "mm"
        ? `${formatNumber(q.value, 1)} kg`
        : `${formatNumber(q.value / kilogramsInPound, 1)} lb`;
    case "Hz":
      return `${formatNumber(q.value, 1)} Hz`;
    case "count":
      return formatNumber(q.value, 3);
    case "text":
      return q.value;
    case "list":
      return inWords(q.value, "or");
    case "all":
      return inWords(q.value, "and");
  }
}

/** What is there must not be told as nothing ("move it by 0"): less than a step is shown finer. */
function showWithUnit(mm: number, show: Show): string {
  const [usual, finer] =
    show.unit === "mm"
      ? [`${showLength(mm, show)} mm`, `${formatNumber(mm, 2)} mm`]
      : [showLength(mm, show), `${formatNumber(mm / 25.4, 3)}"`];
  return usual.startsWith("0 ") || usual === '0"' ? finer : usual;
}

/** "a", "a or b", "a, b or c". */
function inWords(items: readonly string[], last: "or" | "and"): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} ${last} ${items.at(-1)}`;
}
