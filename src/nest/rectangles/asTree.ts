import { blankOf, copyOf, cutInto, eachBlank, eachFree, type Piece } from "./cutTree.js";
import type { Laid, OpenSheet } from "./pack.js";
import { noise, type Rest } from "./rest.js";

/** How a packed sheet is cut up: what followed one another in one direction is one row of strips. */
export function treeOf({ tree, laid }: OpenSheet, whole: Rest): Piece {
  if (tree) return copyOf(tree);
  const inRest = new Map(laid.map((each) => [each.rest, each]));
  const first = laid[0];
  const root = cutInto(whole.w, whole.h, first?.split === "across", []);
  if (first) root.strips.push(...stripsIn(first.rest, root.across));
  return cutInto(whole.w, whole.h, root.across, root.strips);

  /** The strips of a rest that is cut this way, but for its free end. */
  function stripsIn(rest: Rest | undefined, across: boolean): Piece[] {
    const one = rest && inRest.get(rest);
    if (!rest || !one) return [];
    if (isAcross(one) !== across) return [pieceIn(rest, !across)];
    const { right, above } = one;
    return [stripFor(one, across), ...stripsIn(across ? right : above, across)];
  }

  /** The strip that a tile's first cut makes. */
  function stripFor({ item, turn, w, h, rest, right, above }: Laid, across: boolean): Piece {
    const blank = blankOf(item, turn, w, h);
    const beside = across ? above : right;
    if (!beside && (across ? rest.h - h : rest.w - w) <= noise) return blank;
    return cutInto(across ? w : rest.w, across ? rest.h : h, !across, [blank, ...stripsIn(beside, !across)]);
  }

  function pieceIn(rest: Rest, across: boolean): Piece {
    const strips = stripsIn(rest, across);
    const [only] = strips;
    const isAll = strips.length === 1 && only && rest.w - only.w <= noise && rest.h - only.h <= noise;
    return isAll ? only : cutInto(rest.w, rest.h, across, strips);
  }
}

const isAcross = ({ split }: Laid): boolean => split === "across";

/** A sheet that is cut up so, as if it had been packed. */
export function sheetOf(tree: Piece, stock: number): OpenSheet {
  const laid: Laid[] = [];
  const rests: Rest[] = [];
  eachBlank(tree, 0, 0, (blank, x, y) => {
    const { item, turn, w, h } = blank;
    if (item !== undefined) laid.push({ item, x, y, turn, rest: { x, y, w, h }, w, h, split: "along" });
  });
  eachFree(tree, 0, 0, (_, free) => rests.push(free));
  return { stock, rests, laid, corners: new Map(), tree };
}
