import type { Finding, FindingDef, Locate, Severity } from "../input/finding.js";
import { type Show, showQuantity } from "../input/show.js";
import { factsIn, wordsOf } from "../input/words.js";
import { pathInFile, placeOf } from "./places.js";
import type { Paint } from "./terminal.js";

/** What a report needs beside the findings. */
export type Reading = {
  readonly defs: ReadonlyMap<string, FindingDef>;
  readonly show: Show;
  /** Absent where a file could not be read far enough to know its lines. */
  readonly locate?: Locate | undefined;
};

const order: readonly Severity[] = ["error", "warning", "note"];
const styles = { error: "bad", warning: "look", note: "quiet" } as const;

/**
 * Findings in words, errors first, each with its place, and the counts at the end:
 *
 *     error  dash.yaml:14:15  pieces.box.board  (unknown-stock)
 *       found  no board called mdf19
 *       use    mdf-12, mdf-18 or mdf-25
 *       next   pick one of these, or add mdf19 to the shop file
 */
export function reportOf(findings: readonly Finding[], reading: Reading, paint: Paint): string {
  const blocks = inOrder(findings, reading).map((finding) => blockOf(finding, reading, paint));
  return [...blocks, countsOf(findings)].join("\n\n");
}

/** Errors, warnings, notes; within each as they stand in their files, those without a place last. */
export function inOrder(findings: readonly Finding[], { locate }: Reading): readonly Finding[] {
  const keyed = findings.map((finding, index) => ({ finding, index, at: lineAndColumn(finding, locate) }));
  return keyed
    .sort(
      (a, b) =>
        order.indexOf(a.finding.severity) - order.indexOf(b.finding.severity) ||
        compareText(a.at.file, b.at.file) ||
        a.at.line - b.at.line ||
        a.at.column - b.at.column ||
        a.index - b.index,
    )
    .map(({ finding }) => finding);
}

/** "2 errors, 1 warning", or "no findings". */
export function countsOf(findings: readonly Finding[]): string {
  const counts = order.flatMap((severity) => {
    const n = findings.filter((finding) => finding.severity === severity).length;
    return n === 0 ? [] : [`${n} ${severity}${n === 1 ? "" : "s"}`];
  });
  return counts.length === 0 ? "no findings" : counts.join(", ");
}

/** A finding for a machine: its words beside its facts. */
export function asData(finding: Finding, reading: Reading) {
  const { words, next } = wordsOf(finding, defOf(finding, reading), reading.show);
  const at = finding.at.map((origin) => ({
    ...(reading.locate?.(origin) ?? { file: origin.file }),
    path: origin.path,
  }));
  return { code: finding.code, severity: finding.severity, words, next, at, on: finding.on, facts: finding.facts };
}

function blockOf(finding: Finding, reading: Reading, paint: Paint): string {
  const def = defOf(finding, reading);
  const { words, next } = wordsOf(finding, def, reading.show);
  const [first, ...others] = finding.at;
  const place = first === undefined ? finding.on.join(", ") : placeOf(first, reading.locate);
  const path = first === undefined ? "" : pathInFile(first.path);
  const head = [paint(styles[finding.severity], finding.severity), place, path, paint("quiet", `(${finding.code})`)];
  const lines: (readonly [label: string, words: string])[] = [["found", words]];
  const allowed = finding.facts["allowed"];
  if (allowed !== undefined && !factsIn(def.words + def.next).includes("allowed")) {
    lines.push(["use", showQuantity(allowed, reading.show)]);
  }
  lines.push(["next", next]);
  const seen = new Set(others.map((other) => `${placeOf(other, reading.locate)}  ${pathInFile(other.path)}`));
  for (const other of seen) lines.push(["see", other]);
  const indented = lines.map(([label, said]) => `  ${label.padEnd(5)}  ${said}`);
  return [head.filter((part) => part !== "").join("  "), ...indented].join("\n");
}

function defOf(finding: Finding, { defs }: Reading): FindingDef {
  const def = defs.get(finding.code);
  if (def === undefined) throw new Error(`no words for the finding ${finding.code}`);
  return def;
}

function lineAndColumn(finding: Finding, locate: Locate | undefined) {
  const [first] = finding.at;
  const last = { file: "\uffff", line: 0, column: 0 };
  return first === undefined ? last : (locate?.(first) ?? { ...last, file: first.file });
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
