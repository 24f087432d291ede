import { treeOf } from "../asTree.js";
import { itemsIn, type Piece, renamed } from "../cutTree.js";
import type { OpenSheet } from "../pack.js";
import type { Rest } from "../rest.js";

/** A way to cut up a sheet that the search came by: its tree names kinds, not items, and so do `kinds`, in order, each as often as
 *  it lies there. */
export type Found = { readonly tree: Piece; readonly kinds: readonly number[] };

/** What was found, no two with the same kinds in them. */
export type Finds = {
  readonly all: () => readonly Found[];
  /** Returns: false where there is one with the same kinds. `tree` is not copied. */
  readonly add: (tree: Piece) => boolean;
  /** Once more than so many pieces lie in all of them, keeps those worth most by these prices, with half as many. */
  readonly thin: (most: number, prices: readonly number[]) => void;
};

export function noFinds(): Finds {
  let finds = new Map<string, Found>();
  let pieces = 0;
  return {
    all: () => [...finds.values()],
    add: (tree) => {
      const kinds = kindsIn(tree);
      const key = kinds.join();
      if (kinds.length === 0 || finds.has(key)) return false;
      finds.set(key, { tree, kinds });
      pieces += kinds.length;
      return true;
    },
    thin: (most, prices) => {
      if (pieces <= most) return;
      const kept = dearest([...finds.values()], prices, most / 2);
      finds = new Map(kept.map((found) => [found.kinds.join(), found]));
      pieces = kept.reduce((sum, { kinds }) => sum + kinds.length, 0);
    },
  };
}

/** Those worth most by these prices first, with no more than so many pieces in all of them. */
export function dearest(finds: readonly Found[], prices: readonly number[], most: number): readonly Found[] {
  const keyed = finds.map((found) => ({ found, worth: priceOf(found.kinds, prices) }));
  keyed.sort((a, b) => b.worth - a.worth);
  let pieces = 0;
  const isKept = ({ kinds }: Found): boolean => {
    pieces += kinds.length;
    return pieces <= most;
  };
  return keyed.map(({ found }) => found).filter(isKept);
}

export function priceOf(kinds: readonly number[], prices: readonly number[]): number {
  let sum = 0;
  for (const kind of kinds) sum += prices[kind]!;
  return sum;
}

const kindsIn = (tree: Piece): readonly number[] => itemsIn(tree).sort((a, b) => a - b);

/** How a packed sheet is cut up, by kinds. */
export const kindsTree = (sheet: OpenSheet, whole: Rest, kindOf: ReadonlyMap<number, number>): Piece =>
  renamed(treeOf(sheet, whole), ({ turn }, item) => ({ item: kindOf.get(item)!, turn }));
