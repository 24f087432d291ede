import type { Finding } from "../input/finding.js";

/**
 * The findings with those that say the same of several things told once: same code, place and facts, all their parts
 * and axes named together. Eight screws that are each too long are one thing to put right.
 */
export function gatherFindings(findings: readonly Finding[]): readonly Finding[] {
  const told = new Map<string, Finding>();
  for (const finding of findings) {
    const key = JSON.stringify([finding.code, finding.severity, finding.at, finding.facts]);
    const before = told.get(key);
    told.set(key, before ? { ...before, on: [...new Set([...before.on, ...finding.on])] } : finding);
  }
  return [...told.values()];
}
