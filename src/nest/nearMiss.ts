import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import { nameOf } from "../plan/standing.js";
import { rules } from "../shop/rules.js";
import type { NestItem, NestResult } from "./engine.js";
import { excessOf, liesOf } from "./lies.js";
import type { StockRow } from "./stock.js";

export const nearMiss: FindingDef = {
  code: "near-miss",
  severity: "note",
  words: "{part} is {short} too large for {row} of {stock}, which lies in the rack unused",
  next: "see whether the part may be that much smaller, or the offcut's trim that much less; else nothing need be done",
  explain:
    "A part had to go on a sheet that is bought, or found no place, and an offcut or sheet that is there already misses it " +
    "by very little. Often an allowance, a reveal or a trim can give that much.",
};

/** What was asked of a search, and whose the items are. */
type Asked = {
  readonly items: readonly NestItem[];
  readonly parts: readonly Part[];
  readonly rows: readonly StockRow[];
};

/**
 * For each board of the rack that stayed unused and misses a part by little: the part that it misses by least, of those
 * that lie on bought sheets or nowhere. By extents; odd offcuts are not looked at.
 */
export function nearMisses(job: Job, { items, parts, rows }: Asked, { sheets, left }: NestResult): readonly Finding[] {
  const bought = sheets.filter(({ stock }) => rows[stock]!.cost > 0).flatMap(({ placed }) => placed);
  const wanting = [...bought.map(({ item }) => item), ...left];
  const unused = rows.filter(
    (row, i) => row.cost === 0 && !row.outline && !row.restOf && !sheets.some(({ stock }) => stock === i),
  );
  return unused.flatMap((row) => {
    const misses = wanting
      .map((item) => ({ item, short: excessOf(liesOf(items[item]!), row) }))
      .sort((a, b) => a.short - b.short);
    const [least] = misses;
    if (least === undefined || least.short <= 1e-6 || least.short > rules.nearMiss.value) return [];
    const part = parts[least.item]!;
    const stock = job.boards[part.board]?.stock ?? part.board;
    const facts = { part: text(nameOf(part)), short: mm(least.short), row: text(row.name), stock: text(stock) };
    return [raise(nearMiss, { at: part.from, on: [part.id], facts })];
  });
}
