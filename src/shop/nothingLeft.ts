import { type Finding, text } from "../input/finding.js";
import type { KeptClear } from "../model/shop.js";

/** What `nothingLeftOf` says: of which board, and which keys take it. */
export function nothingLeftFacts(board: string, row: KeptClear): Finding["facts"] {
  const keys = (["clamps", "knots", "pins", "holes"] as const).filter((key) => (row[key] ?? []).length > 0);
  const zones = keys.join(" and ");
  return { board: text(board), ...(zones && { zones: text(zones) }), check: text(zones || "the trim") };
}
