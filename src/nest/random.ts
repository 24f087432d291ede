/** Numbers that look random, from 0 up to but not 1: the same seed gives the same row of them on every machine. */
export type Random = () => number;

/** A 32-bit counter stirred by multiply and shift (the "mulberry" mixer, public domain; from memory). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One of the list, each as likely as the next. */
export function pick<T>(random: Random, list: readonly [T, ...T[]]): T {
  return list[Math.floor(random() * list.length)]!;
}
