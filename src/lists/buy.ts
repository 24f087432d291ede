/** A line of the shopping list. `price` is for one, or for one unit; `cost` for all of them, in the shop's currency. */
export type Buy = {
  readonly kind: "sheet" | "fitting" | "covering" | "adhesive";
  readonly item: string;
  readonly count: number;
  /** Absent: pieces. */
  readonly unit?: string;
  readonly price?: number;
  readonly cost?: number;
  readonly note: string;
};
