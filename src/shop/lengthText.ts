import { formatNumber } from "../input/number.js";
import { showLength } from "../input/show.js";

/** A length as one types it in a file in millimetres: sizes that are inches by nature in fractions, `3/4in`. */
export function lengthText(mm: number): string {
  const halves = mm * 2;
  const sixtyFourths = (mm / 25.4) * 64;
  const isMetric = Math.abs(halves - Math.round(halves)) < 1e-9;
  if (isMetric || Math.abs(sixtyFourths - Math.round(sixtyFourths)) > 1e-9) return formatNumber(mm, 9);
  return showLength(mm, { unit: "in", denominator: 64 }).replace('"', "in");
}
