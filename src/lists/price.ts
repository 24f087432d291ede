import type { Buy } from "./buy.js";

/** What a shopping list comes to: the sum of what has a price, and the items that have none. */
export type Price = {
  readonly currency?: string;
  /** Two decimals. Least, where `unpriced` is not empty. */
  readonly total: number;
  readonly unpriced: readonly string[];
};

export function priceOf(buys: readonly Buy[], currency: string | undefined): Price {
  const cents = buys.reduce((sum, { cost }) => sum + Math.round((cost ?? 0) * 100), 0);
  return {
    ...(currency === undefined ? {} : { currency }),
    total: cents / 100,
    unpriced: buys.filter(({ cost }) => cost === undefined).map(({ item }) => item),
  };
}
