import { blankOf, cutInto, type Piece } from "../cutTree.js";
import { noise } from "../rest.js";
import type { Filling } from "./filling.js";
import type { Size } from "./kind.js";

/** What is cut from a sheet in place of a kind. */
export type Blank = Size & { readonly item: number; readonly turn: number };

/** A filling with blanks in it; its size is what they take. */
type Filled = Size & ({ readonly blank: Blank } | { readonly across: boolean; readonly strips: readonly Filled[] });

/**
 * A sheet that is cut up by a filling, rows of strips where the filling has cut after cut the same way. `blankFor`: the next
 * blank of a kind that lies so, if any is left: else its place stays free.
 *
 * Returns: undefined where nothing is cut from it.
 */
export function cutBy(
  filling: Filling,
  sheet: Size,
  blankFor: (kind: number, lie: number) => Blank | undefined,
): Piece | undefined {
  const filled = filledBy(filling, blankFor);
  if (filled === undefined) return undefined;
  const piece = pieceFor(filled, sheet.w, sheet.h);
  return piece.item === undefined ? piece : cutInto(sheet.w, sheet.h, true, [piece]);
}

function filledBy(filling: Filling, blankFor: (kind: number, lie: number) => Blank | undefined): Filled | undefined {
  if ("kind" in filling) {
    const blank = blankFor(filling.kind, filling.lie);
    return blank && { w: blank.w, h: blank.h, blank };
  }
  const { across } = filling;
  const strips = [filling.one, filling.other].flatMap((half) => {
    const filled = filledBy(half, blankFor);
    if (filled === undefined) return [];
    return "strips" in filled && filled.across === across ? filled.strips : [filled];
  });
  return strips.length > 1 ? rowOf(strips, across) : strips[0];
}

function rowOf(strips: readonly Filled[], across: boolean): Filled {
  const [along, beside] = across ? (["w", "h"] as const) : (["h", "w"] as const);
  const sum = strips.reduce((total, strip) => total + strip[along], 0);
  const most = strips.reduce((widest, strip) => Math.max(widest, strip[beside]), 0);
  return across ? { w: sum, h: most, across, strips } : { w: most, h: sum, across, strips };
}

/** What stays free is one strip beside all, and the end of the row. */
function pieceFor(filled: Filled, w: number, h: number): Piece {
  const isWide = w - filled.w > noise;
  const isHigh = h - filled.h > noise;
  if ("blank" in filled) {
    const { item, turn } = filled.blank;
    if (!isWide && !isHigh) return blankOf(item, turn, Math.min(w, filled.w), Math.min(h, filled.h));
    const across = isWide && (!isHigh || (w - filled.w) * h >= (h - filled.h) * w);
    return cutInto(w, h, across, [across ? pieceFor(filled, filled.w, h) : pieceFor(filled, w, filled.h)]);
  }
  const { across, strips } = filled;
  if (across ? isHigh : isWide)
    return cutInto(w, h, !across, [across ? pieceFor(filled, w, filled.h) : pieceFor(filled, filled.w, h)]);
  return cutInto(
    w,
    h,
    across,
    strips.map((strip) => (across ? pieceFor(strip, strip.w, h) : pieceFor(strip, w, strip.h))),
  );
}
