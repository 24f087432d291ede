import type { Kind, Size } from "../../../../src/nest/rectangles/patterns/kind.js";

/** The most that can be cut from a sheet of whole millimetres: every cut at every millimetre is tried. */
export function mostByEveryCut(kinds: readonly Kind[], worths: readonly number[], { w, h }: Size): number {
  const most = Array.from({ length: w + 1 }, () => new Float64Array(h + 1));
  for (let i = 1; i <= w; i++)
    for (let j = 1; j <= h; j++) {
      let value = 0;
      for (const [kind, { lies }] of kinds.entries())
        if (lies.some((lie) => lie.w <= i && lie.h <= j)) value = Math.max(value, worths[kind]!);
      for (let cut = 1; cut < i; cut++) value = Math.max(value, most[cut]![j]! + most[i - cut]![j]!);
      for (let cut = 1; cut < j; cut++) value = Math.max(value, most[i]![cut]! + most[i]![j - cut]!);
      most[i]![j] = value;
    }
  return most[w]![h]!;
}

export const kindOf = (w: number, h: number, wanted = 1, turns = false): Kind => {
  const lies = turns && w !== h ? [lying(w, h), lying(h, w)] : [lying(w, h)];
  return { lies, wanted };
};

const lying = (w: number, h: number) => ({ w, h, least: { w, h } });
