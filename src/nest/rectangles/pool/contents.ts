import type { Found } from "./found.js";

/** What lies on each of many sheets: kinds, each with how often, one sheet after another; those of sheet i end before
 *  `ends[i]`, where those of the next begin. */
export type Contents = { readonly ends: Int32Array; readonly kinds: Int32Array; readonly counts: Int32Array };

export function contentsOf(finds: readonly Found[]): Contents {
  const pieces = finds.reduce((sum, { kinds }) => sum + kinds.length, 0);
  const ends = new Int32Array(finds.length);
  const kinds = new Int32Array(pieces);
  const counts = new Int32Array(pieces);
  let end = 0;
  finds.forEach((found, i) => {
    const begin = end;
    for (const kind of found.kinds) {
      if (end === begin || kinds[end - 1] !== kind) kinds[end++] = kind;
      counts[end - 1] = counts[end - 1]! + 1;
    }
    ends[i] = end;
  });
  return { ends, kinds, counts };
}

export const beginOf = ({ ends }: Contents, i: number): number => (i > 0 ? ends[i - 1]! : 0);

/** What all that lies on a sheet is worth. */
export function worthOn(contents: Contents, i: number, prices: ArrayLike<number>): number {
  const { ends, kinds, counts } = contents;
  const end = ends[i]!;
  let sum = 0;
  for (let n = beginOf(contents, i); n < end; n++) sum += counts[n]! * prices[kinds[n]!]!;
  return sum;
}

/** The sheets on which each kind lies, each with how often. */
export function holdersOf(contents: Contents, kinds: number): readonly (readonly Holder[])[] {
  const holders: Holder[][] = Array.from({ length: kinds }, () => []);
  contents.ends.forEach((end, sheet) => {
    for (let n = beginOf(contents, sheet); n < end; n++)
      holders[contents.kinds[n]!]!.push({ sheet, count: contents.counts[n]! });
  });
  return holders;
}

export type Holder = { readonly sheet: number; readonly count: number };
