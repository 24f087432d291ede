import type { Bolt, ThreadedInsert } from "../../model/shop.js";
import { insertHoleDepth } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";

/** What a bolt must pass before its thread: with coverings as laid, and as pressed by the tightened bolt, mm. */
export type Grip = { readonly loose: number; readonly tight: number };

export type LengthRange = { readonly least: number; readonly most: number };

/**
 * The lengths of bolt that will do: it must start while the coverings are loose, engage by its own diameter when they
 * are clamped, and then stop at least 1 mm short of the bottom of its hole. (One diameter of engagement, one thread to
 * start: common practice, no source.)
 */
export function boltLengths(bolt: Bolt, insert: ThreadedInsert, grip: Grip): LengthRange {
  return {
    least: Math.max(grip.loose + bolt.pitch, grip.tight + rules.boltEngages.value * bolt.d),
    most: grip.tight + insertHoleDepth(insert) - rules.boltShort.value,
  };
}

/** The shortest stock length that will do; nothing where none does: never rounded up in silence. */
export function stockLength(bolt: Bolt, { least, most }: LengthRange): number | undefined {
  return bolt.lengths.find((length) => length >= least && length <= most);
}
