import type { Finding, Locate } from "./finding.js";

/** Findings as they are met when one reads the file from its top. */
export function inFileOrder(findings: readonly Finding[], locate: Locate): readonly Finding[] {
  const placed = findings.map((finding) => ({ finding, place: finding.at[0] && locate(finding.at[0]) }));
  return placed
    .sort((a, b) => (a.place?.line ?? 0) - (b.place?.line ?? 0) || (a.place?.column ?? 0) - (b.place?.column ?? 0))
    .map(({ finding }) => finding);
}
