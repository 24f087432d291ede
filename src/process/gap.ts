import type { Method, Shop } from "../model/shop.js";
import { cutOf, rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";

/** Least clearance beside the bit where no machine is described: mm, common practice, no source. */
const besideBit = 2;

/**
 * Least distance from a part to its neighbours on the sheet, mm.
 *
 * cnc:   the widest bit that goes through the board round this part, and the machine's clearance.
 * saw:   the kerf, of two saws the narrower: what one cut takes is all that lies between two parts.
 * hand:  both parts are cut free with an allowance left on, with one kerf between them.
 */
export function gapOf(shop: Shop, method: Method, throughBits: readonly string[]): number {
  const kerf = Math.min(shop.saw.kerf, shop["track saw"]?.kerf ?? shop.saw.kerf);
  if (method === "saw") return kerf;
  if (method === "hand") return 2 * rules.roughAllowance.value + kerf;
  const widest = throughBits.reduce((most, name) => {
    const bit = rowOf(shop.bits, name);
    return bit ? Math.max(most, cutOf(bit)) : most;
  }, 0);
  return widest + (shop.cnc?.clearance ?? besideBit);
}
