import { below, type Finding, type FindingDef, list, type Origin, raise, text } from "./finding.js";
import { asWritten } from "./refusal.js";

export const missingVersion: FindingDef = {
  code: "missing-version",
  severity: "error",
  words: "the file does not say which version it is written for",
  next: "write version: {allowed} on the first line",
  explain: "The version tells how the file is to be read, now and when later versions know more keys.",
};

export const unknownVersion: FindingDef = {
  code: "unknown-version",
  severity: "error",
  words: "version {found} is not known",
  next: "write version: {allowed}, or use a newer program",
  explain: "This program knows the listed versions. A file of a later one may mean things that it would misread.",
};

/** What is wrong with the version at the top of a file. */
export function versionFindings(
  { version }: Readonly<Record<string, unknown>>,
  root: Origin,
  known: readonly number[],
): readonly Finding[] {
  const allowed = list(known.map(String));
  if (version === undefined || version === null) return [raise(missingVersion, { at: [root], facts: { allowed } })];
  if (known.some((each) => each === version)) return [];
  return [raise(unknownVersion, { at: [below(root, "version")], facts: { found: text(asWritten(version)), allowed } })];
}
