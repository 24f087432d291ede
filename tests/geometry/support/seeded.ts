/** Numbers that look like chance and are the same in every run. Source: mulberry32, T. Ettinger, public domain. */
export type Seeded = {
  /** From 0 up to 1. */
  readonly next: () => number;
  readonly between: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
};

export function seeded(seed: number): Seeded {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    whole: (low, high) => low + Math.floor((high - low + 1) * next()),
    pick: (from) => from[Math.floor(next() * from.length)]!,
    chance: (share) => next() < share,
  };
}
