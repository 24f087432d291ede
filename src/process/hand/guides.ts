import { tolerance } from "../../geometry/tolerance.js";
import type { Shop } from "../../model/shop.js";
import { cutOf } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { bitsOf, isLongEnough, isWithin, type NamedBit } from "../bits.js";

/** A bit and what leads it along a template: a bush round it, or its own bearing. mm. */
export type Guide = { readonly bush?: string; readonly bit: NamedBit; readonly offset: number; readonly thick: number };

/**
 * What on hand leads a bit along a template into corners that take the diameter `widest`, `depth` deep.
 *
 * Offset:  (bush - bit) / 2, by the diameter that the bit really cuts; the same of a bearing.
 * Source:  the relation is printed in woodworking forums (routerforums.com, ukworkshop.co.uk); that inside templates
 *          are larger and outside ones smaller by twice of it follows from it.
 */
export function guidesFor(shop: Shop, widest: number, depth: number, through: boolean): readonly Guide[] {
  const fits = (bit: NamedBit) => isWithin(bit, widest) && isLongEnough(bit, depth);
  const bushed = bitsOf(shop, ["straight"])
    .filter(fits)
    .flatMap((bit) => bushesRound(shop, bit));
  // A bearing runs below or above the edges: there is no room for it over the floor of a recess.
  const borne = through ? bitsOf(shop, ["flush trim"]).filter(fits).flatMap(withBearing) : [];
  return [...borne, ...bushed];
}

function bushesRound(shop: Shop, bit: NamedBit): readonly Guide[] {
  const needs = Math.max(cutOf(bit.bit), bit.bit.shank ?? 0) + 2 * rules.bushClearance.value;
  return Object.entries(shop.bushes)
    .filter(([, { bore }]) => bore >= needs - tolerance.samePoint)
    .map(([bush, { d, stands }]) => ({ bush, bit, offset: (d - cutOf(bit.bit)) / 2, thick: stands }))
    .sort((a, b) => a.offset - b.offset);
}

/** A bearing wider than the bit works as a bush does; a narrower one would let the bit into the template. */
function withBearing(bit: NamedBit): readonly Guide[] {
  const { bearing } = bit.bit;
  const offset = bearing === undefined ? -1 : (bearing - cutOf(bit.bit)) / 2;
  return offset < -tolerance.samePoint ? [] : [{ bit, offset: Math.max(0, offset), thick: 0 }];
}
