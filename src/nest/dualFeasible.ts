/**
 * A function over shares of a sheet's side, 0 to 1, by which lengths may be weighed: whatever lies beside one another in
 * one sheet still weighs no more than 1 together.
 */
export type DualFeasible = (share: number) => number;

/** A length takes no more than its share. */
export const asItIs: DualFeasible = (share) => share;

/**
 * Functions that say more than lengths themselves where pieces leave room beside them that no other fits into.
 *
 * rounded:  what is longer than 1 - e leaves less than e beside it, and counts as 1; what is shorter than e, as nothing.
 * halves:   what is longer than a half is short of 1 by whole pieces of length e; the rest by whole pieces of e, the
 *           middle exactly.
 * steps:    rounded down to whole parts of k + 1, each worth one kth, where it is no whole part itself.
 *
 * Source: S. P. Fekete and J. Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical
 * Programming 91, 2001 (rounded, steps); J. Carlier, F. Clautiaux and A. Moukrim, "New reduction procedures and lower
 * bounds for the two-dimensional bin packing problem with fixed orientation", Computers & Operations Research 34, 2007
 * (halves). From memory; that what fits into one sheet weighs no more than 1 is tested.
 */
export function rounded(e: number): DualFeasible {
  return (share) => (share > 1 - e ? 1 : share < e ? 0 : share);
}

export function halves(e: number): DualFeasible {
  const whole = Math.floor(1 / e + hair);
  return (share) => {
    if (share > 0.5) return 1 - Math.floor((1 - share) / e + hair) / whole;
    return share === 0.5 ? 0.5 : Math.floor(share / e) / whole;
  };
}

export function steps(k: number): DualFeasible {
  return (share) => {
    const parts = (k + 1) * share;
    return Math.abs(parts - Math.round(parts)) < hair ? share : Math.floor(parts) / k;
  };
}

/** Lengths added up go wrong by less, as shares of a sheet. Rounding is always to the side of the lesser weight. */
const hair = 1e-9;
