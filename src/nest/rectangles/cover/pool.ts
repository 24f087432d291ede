import { treeOf } from "../asTree.js";
import { itemsIn, type Piece, renamed } from "../cutTree.js";
import type { OpenSheet } from "../pack.js";
import type { Rest } from "../rest.js";

/** A sheet that could be cut: its tree names kinds, not items, and so do `kinds`, each as often as it lies there. */
export type Pattern = { readonly tree: Piece; readonly kinds: readonly number[] };

/** Patterns to choose sheets from, no two with the same kinds in them. */
export type Pool = {
  readonly all: () => readonly Pattern[];
  /** Returns: false where there is one with the same kinds. `tree` is not copied. */
  readonly add: (tree: Piece) => boolean;
  /** Once more than so many pieces lie in all of them, keeps those worth most by these prices, with half as many. */
  readonly thin: (most: number, prices: readonly number[]) => void;
};

export function emptyPool(): Pool {
  let patterns = new Map<string, Pattern>();
  let pieces = 0;
  return {
    all: () => [...patterns.values()],
    add: (tree) => {
      const kinds = kindsIn(tree);
      const key = kinds.join();
      if (kinds.length === 0 || patterns.has(key)) return false;
      patterns.set(key, { tree, kinds });
      pieces += kinds.length;
      return true;
    },
    thin: (most, prices) => {
      if (pieces <= most) return;
      const kept = dearest([...patterns.values()], prices, most / 2);
      patterns = new Map(kept.map((pattern) => [pattern.kinds.join(), pattern]));
      pieces = kept.reduce((sum, { kinds }) => sum + kinds.length, 0);
    },
  };
}

/** Those worth most by these prices first, with no more than so many pieces in all of them. */
export function dearest(patterns: readonly Pattern[], prices: readonly number[], most: number): readonly Pattern[] {
  const keyed = patterns.map((pattern) => ({ pattern, worth: priceOf(pattern.kinds, prices) }));
  keyed.sort((a, b) => b.worth - a.worth);
  let pieces = 0;
  const isKept = ({ kinds }: Pattern): boolean => {
    pieces += kinds.length;
    return pieces <= most;
  };
  return keyed.map(({ pattern }) => pattern).filter(isKept);
}

export function priceOf(kinds: readonly number[], prices: readonly number[]): number {
  let sum = 0;
  for (const kind of kinds) sum += prices[kind]!;
  return sum;
}

const kindsIn = (tree: Piece): readonly number[] => itemsIn(tree).sort((a, b) => a - b);

/** How a packed sheet is cut up, by kinds. */
export const patternOf = (sheet: OpenSheet, whole: Rest, kindOf: ReadonlyMap<number, number>): Piece =>
  renamed(treeOf(sheet, whole), (item) => kindOf.get(item)!);
