import { tolerance } from "../geometry/tolerance.js";
import type { Bit, Shop } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";

export type NamedBit = { readonly name: string; readonly bit: Bit };

/** The kinds that cut to a line: outlines, openings, pockets, grooves. */
export const routerBits: readonly Bit["kind"][] = ["straight", "compression"];

/** The bits on hand of some kinds, widest first; of two equally wide ones the kind named first. */
export function bitsOf(shop: Shop, kinds: readonly Bit["kind"][]): readonly NamedBit[] {
  return Object.entries(shop.bits)
    .filter(([, bit]) => kinds.includes(bit.kind))
    .map(([name, bit]) => ({ name, bit }))
    .sort((a, b) => cutOf(b.bit) - cutOf(a.bit) || kinds.indexOf(a.bit.kind) - kinds.indexOf(b.bit.kind));
}

/** Whether a bit goes into a slot or corner that takes a diameter, mm. */
export const isWithin = ({ bit }: NamedBit, diameter: number): boolean => cutOf(bit) <= diameter + tolerance.samePoint;

/** Whether its edges are long enough for a depth, mm; a bit whose cutting length nobody wrote down counts as long enough. */
export const isLongEnough = ({ bit }: NamedBit, depth: number): boolean =>
  (bit["cutting length"] ?? Number.POSITIVE_INFINITY) >= depth - tolerance.samePoint;

/** The widest bit on hand that goes where a diameter goes and is long enough for a depth, mm. */
export const routerBit = (shop: Shop, diameter: number, depth: number): NamedBit | undefined =>
  bitsOf(shop, routerBits).find((bit) => isWithin(bit, diameter) && isLongEnough(bit, depth));
