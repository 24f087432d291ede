import type { Piece } from "../rectangles/cutTree.js";
import type { OpenSheet } from "../rectangles/pack.js";
import type { Rest, Split } from "../rectangles/rest.js";

/** What is to be got out of a piece: an item's blank, or strips side by side, each for something. mm, without kerfs. */
export type Wanted =
  | { readonly kind: "blank"; readonly item: number; readonly turn: number; readonly w: number; readonly h: number }
  | { readonly kind: "strips"; readonly split: Split; readonly strips: readonly Strip[] };

/**
 * `size`: across the cuts between the strips, along y where they run along. `loose`: it was packed into all that was left
 * of the piece, and need not be cut to its size before it is cut up itself.
 */
export type Strip = { readonly size: number; readonly of: Wanted; readonly loose?: true };

/**
 * What a packed sheet asks for, from the cuts by which it was packed: cuts that follow one another in one direction are
 * one row of strips, and each strip is as wide as what lies in it, in the fence's steps.
 */
export function wantedOf(sheet: OpenSheet, kerf: number, step: number): Wanted | undefined {
  if (sheet.tree) return treeWanted(sheet.tree);
  const inRest = new Map(sheet.laid.map((laid) => [laid.rest, laid]));
  const [first] = sheet.laid;
  return first && wantedIn(first.rest);

  function treeWanted({ item, turn, w, h, across, strips: pieces, left }: Piece): Wanted {
    if (item !== undefined) return { kind: "blank", item, turn, w: w - kerf, h: h - kerf };
    const split = across ? "across" : "along";
    const all = pieces.map((piece, i): Strip => {
      const of = treeWanted(piece);
      const size = Math.min((across ? piece.w : piece.h) - kerf, stepUp(needOf(of, split, kerf)));
      return { size, of, ...(left === 0 && i === pieces.length - 1 && { loose: true }) };
    });
    return strips(split, all);
  }

  function stepUp(size: number): number {
    return Math.ceil(size / step - 1e-6) * step;
  }

  function asStrips(rest: Rest | undefined, split: Split): readonly Strip[] {
    const wanted = wantedIn(rest);
    if (rest === undefined || wanted === undefined) return [];
    if (wanted.kind === "strips" && wanted.split === split) return wanted.strips;
    const whole = (split === "along" ? rest.h : rest.w) - kerf;
    const need = stepUp(needOf(wanted, split, kerf));
    return [{ size: Math.min(whole, need), of: wanted, loose: true }];
  }

  function wantedIn(rest: Rest | undefined): Wanted | undefined {
    const laid = rest && inRest.get(rest);
    if (!laid) return undefined;
    const { item, turn, split, right, above } = laid;
    const w = laid.w - kerf;
    const h = laid.h - kerf;
    const blank: Wanted = { kind: "blank", item, turn, w, h };
    const [near, far, across, sizes] =
      split === "along" ? ([right, above, "across", [w, h]] as const) : ([above, right, "along", [h, w]] as const);
    const strip = strips(across, [{ size: sizes[0], of: blank }, ...asStrips(near, across)]);
    return strips(split, [{ size: sizes[1], of: strip }, ...asStrips(far, split)]);
  }
}

const strips = (split: Split, all: readonly Strip[]): Wanted => ({ kind: "strips", split, strips: all });

/** How wide a piece has to be for what is wanted of it, across cuts that run this way. */
export function needOf(wanted: Wanted, split: Split, kerf: number): number {
  if (wanted.kind === "blank") return split === "along" ? wanted.h : wanted.w;
  const { strips: all } = wanted;
  if (wanted.split !== split) return Math.max(...all.map((strip) => needOf(strip.of, split, kerf)));
  return all.reduce((sum, strip) => sum + strip.size + kerf, -kerf);
}
