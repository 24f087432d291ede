import { formatNumber } from "../input/number.js";
import { showLength } from "../input/show.js";

/**
 * A bolt as it is asked for over the counter: "M6 x 20 button black", "1/4-20 x 1 button". The length stands behind the
 * thread, in inches (without the sign) for inch threads.
 */
export function boltName(name: string, thread: string, length: number): string {
  const inches = !thread.startsWith("M");
  const size = inches ? showLength(length, { unit: "in", denominator: 16 }).replace('"', "") : formatNumber(length, 1);
  const rest = name.startsWith(thread) ? name.slice(thread.length) : ` ${name}`;
  return `${thread} x ${size}${rest}`;
}
