import { formatNumber } from "../input/number.js";
import { type Show, showLength } from "../input/show.js";

const inch = 25.4;

/** Grown by less than anyone reads, so that half a step rounds away from the datum on every part, whatever the noise. */
const outward = (mm: number) => mm + Math.sign(mm) * 1e-6;
const shown = (mm: number, show: Show) => showLength(outward(mm), show);

/** A length between marks on the work, in the job's unit. Measured from one datum, chains of these agree. */
export function runningSize(mm: number, show: Show): string {
  return shown(mm, show);
}

/** A size that is not on a step, to a tenth of a millimetre: "23 7/8" + 0.1 mm", "606.6 mm". */
export function exactSize(mm: number, show: Show): string {
  if (show.unit === "mm") return `${shown(mm, show)} mm`;
  const step = inch / show.denominator;
  const rest = outward(mm) - Number(formatNumber(outward(mm) / step, 0)) * step;
  const more = formatNumber(Math.abs(rest), 1);
  return more === "0" ? shown(mm, show) : `${shown(mm, show)} ${rest < 0 ? "-" : "+"} ${more} mm`;
}

/** An overall size: in an inch job with millimetres in brackets. */
export function overallSize(mm: number, show: Show): string {
  return show.unit === "mm" ? shown(mm, show) : `${shown(mm, show)} [${formatNumber(outward(mm), 1)}]`;
}

/** "420 × 300"; in an inch job with both in millimetres behind it. */
export function sizePair(width: number, height: number, show: Show): string {
  const pair = `${runningSize(width, show)} × ${runningSize(height, show)}`;
  return show.unit === "mm" ? pair : `${pair} [${sizePair(width, height, { unit: "mm" })}]`;
}

/**
 * From one mark to another as their printed running sizes have it, so that what is printed adds up: 3 5/16" less
 * 1 3/16" is 2 1/8", whatever the size between would round to by itself.
 */
export function spanSize(from: number, to: number, show: Show): string {
  const step = show.unit === "mm" ? 0.1 : inch / show.denominator;
  const steps = (mm: number) => Number(formatNumber(outward(mm) / step, 0));
  return showLength((steps(to) - steps(from)) * step, show);
}

/**
 * A thickness, depth or hole: in an inch job millimetres with the nearest 64th behind it, as a 16th would be another
 * drill. From 2 inches on the job's own fractions are near enough.
 */
export function toolSize(mm: number, show: Show): string {
  if (show.unit === "mm") return shown(mm, show);
  if (mm >= 2 * inch) return overallSize(mm, show);
  return `${formatNumber(outward(mm), 1)} mm (${shown(mm, { unit: "in", denominator: 64 })})`;
}

export function degrees(rad: number): string {
  return `${formatNumber((rad * 180) / Math.PI, 1)}°`;
}
