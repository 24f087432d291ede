import { readEntries } from "../input/entries.js";
import { type Finding, list, type Origin, type Outcome, raise, text } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { nearest } from "../input/nearest.js";
import type { Sourced } from "../model/shop.js";
import { noSuchRow } from "./findings.js";
import { rowOf } from "./lookups.js";
import type { RowSchemas } from "./rows.js";

/** A table of the shop as the file leaves it, and what was wrong in the file. */
export type Laid<T> = { readonly rows: Readonly<Record<string, T>>; readonly findings: readonly Finding[] };

/** Behind a name: take this row out. */
const none = "none";

/**
 * Lays the rows of a shop file over the built-in ones of the same names, key by key. A row with a mistake in it is left
 * out, the built-in one too: whoever wrote it does not want that.
 */
export function layOver<T extends Sourced>(
  builtIn: Readonly<Record<string, T>>,
  written: unknown,
  at: Origin,
  row: RowSchemas<T>,
): Laid<T> {
  const read = readEntries(written, at, (entry, place, name): Outcome<T> => {
    const base = rowOf(builtIn, name);
    if (entry !== none) return base === undefined ? readWith(row.full, entry, place) : layRow(base, entry, place, row);
    return { value: undefined, findings: base === undefined ? [missing(name, place, builtIn)] : [] };
  });
  const kept = Object.entries(builtIn).filter(([name]) => !read.withheld.includes(name));
  return { rows: { ...Object.fromEntries(kept), ...read.values }, findings: read.findings };
}

/** One row laid over another: what it does not say stays. */
export function layRow<T extends Sourced>(base: T, written: unknown, at: Origin, row: RowSchemas<T>): Outcome<T> {
  const { value, findings } = readWith(row.partial, written, at);
  if (value === undefined) return { value, findings };
  const source = value.source ?? (base.source && `${base.source}; changed in the shop file`);
  return { value: { ...base, ...value, source }, findings };
}

function missing(name: string, at: Origin, builtIn: Readonly<Record<string, unknown>>): Finding {
  const known = Object.keys(builtIn);
  const close = nearest(name, known);
  const allowed = close === undefined ? known : [close];
  const facts = { found: text(name), allowed: list(allowed), ...(close && { nearest: text(close) }) };
  return raise(noSuchRow, { at: [at], facts });
}
