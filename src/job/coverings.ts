import { type Finding, type FindingDef, list, type Outcome, raise, text } from "../input/finding.js";
import { nearest } from "../input/nearest.js";
import type { Covering, Job } from "../model/job.js";
import type { CoveringStock, Shop } from "../model/shop.js";
import { coverings as builtIn } from "../shop/coverings.js";
import { rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";

export const unknownCovering: FindingDef = {
  code: "unknown-covering-stock",
  severity: "error",
  words: "the shop has no covering called {found}[; did you mean {nearest}?]",
  next: "use {allowed}, give thick: here, or add {found} to the shop file",
  explain:
    "A covering's thickness decides how far a covered edge is cut back. It stands either in the job or in the shop file's row of that name.",
};

type Choice = { readonly stock: string; readonly thick?: number | undefined; readonly clamped?: number | undefined };

/** A covering of the job filled up from the built-in tables, with a note of what it did not say itself. */
export function coveringOf(choice: Choice): Covering {
  const assumed = (["thick", "clamped"] as const).filter((key) => choice[key] === undefined);
  const filled = fill(
    { stock: choice.stock, thick: choice.thick ?? 0, clamped: choice.clamped ?? 0 },
    assumed,
    builtIn,
  );
  return assumed.length > 0 ? { ...filled, assumed } : filled;
}

/**
 * The job with everything it left to the shop taken from the shop that was read: what a covering did not say comes from
 * the shop's row. One that nobody knows the thickness of is left out, with a finding.
 */
export function withShop(job: Job, shop: Shop): Outcome<Job> {
  const findings: Finding[] = [];
  const coverings = Object.entries(job.coverings).flatMap(([name, covering]): [string, Covering][] => {
    if (covering.assumed?.includes("thick") !== true || rowOf(shop.coverings, covering.stock) !== undefined) {
      return [[name, fill(covering, covering.assumed ?? [], shop.coverings)]];
    }
    const known = Object.keys(shop.coverings);
    const close = nearest(covering.stock, known);
    const facts = { found: text(covering.stock), allowed: list(known), ...(close && { nearest: text(close) }) };
    findings.push(raise(unknownCovering, { at: [{ file: job.file, path: ["coverings", name, "stock"] }], facts }));
    return [];
  });
  const kept = new Set(coverings.map(([name]) => name));
  const lost = Object.keys(job.coverings).filter((name) => !kept.has(name));
  const unread = [...(job.unread ?? []), ...lost.map((name) => ({ kind: "covering" as const, name }))];
  const value = { ...job, coverings: Object.fromEntries(coverings), ...(unread.length > 0 && { unread }) };
  return { value, findings };
}

function fill(
  covering: Covering,
  assumed: readonly ("thick" | "clamped")[],
  rows: Readonly<Record<string, CoveringStock>>,
): Covering {
  const row = rowOf(rows, covering.stock);
  const thick = (assumed.includes("thick") ? row?.thick : undefined) ?? covering.thick;
  // The row's share, where the job gives a thickness of its own: a thicker carpet of the same kind gives way as much.
  const share = row === undefined || row.thick === 0 ? rules.clampedShare.value : row.clamped / row.thick;
  return { ...covering, thick, clamped: assumed.includes("clamped") ? thick * share : covering.clamped };
}
