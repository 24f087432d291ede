// Beyond this many steps of the last digit a double has no digits to spare: noise and halves cannot be told apart.
const mostSteps = 2 ** 49;

/**
 * A number as every writer prints it: fixed decimals, halves away from zero, no exponent, no negative zero, no locale.
 * Trailing zeros are dropped unless `keepZeros`. A value within four units in the last place of a half counts as the
 * half, so that 1.005 gives 1.01 although its double lies just below.
 *
 * Throws: RangeError where the value is not finite (our own mistake, never the reader's).
 */
export function formatNumber(value: number, decimals: number, options: { readonly keepZeros?: boolean } = {}): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`);
  const fixed = fixedDecimals(Math.abs(value), decimals);
  const shown = decimals === 0 || options.keepZeros ? fixed : fixed.replace(/\.?0+$/, "");
  return value < 0 && /[1-9]/.test(shown) ? `-${shown}` : shown;
}

/** The size of a number with exactly so many decimals. */
function fixedDecimals(size: number, decimals: number): string {
  const scaled = size * 10 ** decimals;
  if (scaled >= mostSteps) return size < 1e21 ? size.toFixed(decimals) : withDecimals(`${BigInt(size)}`, "", decimals);
  const steps = `${Math.floor(scaled + 0.5 + scaled * 2 ** -51)}`.padStart(decimals + 1, "0");
  return withDecimals(steps.slice(0, steps.length - decimals), steps.slice(steps.length - decimals), decimals);
}

function withDecimals(whole: string, fraction: string, decimals: number): string {
  return decimals === 0 ? whole : `${whole}.${fraction.padEnd(decimals, "0")}`;
}
