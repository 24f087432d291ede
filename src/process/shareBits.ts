import type { PartId } from "../model/ids.js";
import type { Part } from "../model/part.js";
import type { Method, Shop } from "../model/shop.js";
import { cutOf } from "../shop/lookups.js";
import { widestBitFor } from "./tools.js";

/**
 * The widest bit, mm, that each part is to be cut with, so that the parts of one board do not ask for a change of bit
 * where they need none: a part goes by the tightest corner of all that are cut the same way from its board, though not
 * for the sake of a bit less than half as wide as it could take itself (a thin bit is slow and short).
 */
export function shareBits(
  shop: Shop,
  parts: readonly { readonly part: Part; readonly method: Method }[],
): ReadonlyMap<PartId, number> {
  const own = parts.map(({ part, method }) => {
    const bit = widestBitFor(shop, part, method);
    return { part, method, widest: bit ? cutOf(bit.bit) : 0 };
  });
  const shared = own.map(({ part, method, widest }) => {
    const others = own.filter((each) => each.part.board === part.board && each.method === method);
    const near = others.map((each) => each.widest).filter((other) => other >= widest / 2);
    return [part.id, Math.min(widest, ...near)] as const;
  });
  return new Map(shared);
}
