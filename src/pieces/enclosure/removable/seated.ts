import type { Bolt, Shop, ThreadedInsert } from "../../../model/shop.js";
import { insertHoleDepth, insertsFor, rowOf } from "../../../shop/lookups.js";
import { rules } from "../../../shop/rules.js";

/** An insert that bolts go into, and how many boards its hole needs, glued one behind the other, to stay blind. */
export type Seated = { readonly name: string; readonly row: ThreadedInsert; readonly layers: number };

/**
 * The insert that the job names, if it has the bolt's thread; else the longest that stays blind in one board, or the
 * shortest of those that do not. `board`: how thick that is, mm.
 */
export function seatedIn(named: string | undefined, { thread }: Bolt, board: number, shop: Shop): Seated | undefined {
  const layersFor = (row: ThreadedInsert) =>
    Math.max(1, Math.ceil((insertHoleDepth(row) + rules.tipFloor.value) / board - 1e-9));
  if (named !== undefined) {
    const row = rowOf(shop.inserts, named);
    return row?.thread === thread ? { name: named, row, layers: layersFor(row) } : undefined;
  }
  const known = insertsFor(shop, thread).map(({ name, insert: row }) => ({ name, row, layers: layersFor(row) }));
  return known.findLast(({ layers }) => layers === 1) ?? known[0];
}

/** From an insert's middle to the edge of its board at the least, mm. */
export const roomOf = (insert: Seated | undefined): number => rules.insertEdge.value * (insert?.row.hole ?? 0);
