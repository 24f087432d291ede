import { formatNumber } from "../../input/number.js";

/** A cell: text, or a number that a spreadsheet may add up. Undefined is an empty cell. */
export type Cell = string | number | undefined;

/**
 * A table after RFC 4180: commas, lines that end in CR LF, quotes where needed. UTF-8 with a byte order mark: without
 * one, common spreadsheets read a file of their own language's old code page.
 */
export function csvBytes(rows: readonly (readonly Cell[])[]): Uint8Array {
  const lines = rows.map((row) => row.map(written).join(","));
  return new TextEncoder().encode(`\u{feff}${lines.join("\r\n")}\r\n`);
}

function written(cell: Cell): string {
  if (cell === undefined) return "";
  if (typeof cell === "number") return formatNumber(cell, 6);
  const safe = harmless(cell);
  return /[",]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Text on one line that no spreadsheet takes for a formula: where it starts with a sign that begins one (OWASP, "CSV
 * Injection", from memory; the wide forms of the signs too), an apostrophe goes before it. Text that is a plain number
 * stays as it is, so "-3" is still minus three.
 */
function harmless(text: string): string {
  const line = text.replace(/[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]+/gu, " ").trim();
  const startsFormula = /^[=+\-@|\uff1d\uff0b\uff0d\uff20]/u.test(line);
  return startsFormula && !/^[-+]?\d+([.,]\d+)?$/.test(line) ? `'${line}` : line;
}
