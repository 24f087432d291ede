import { z } from "zod";
import type { FindingDef, Quantity } from "./finding.js";

/** What a refused value carries through zod: the finding it becomes and its facts. */
export type Refusal = { readonly finding: FindingDef; readonly facts: Readonly<Record<string, Quantity>> };

/** The part of zod's context for checks that a refusal needs; transforms and superRefine both hand it in. */
type Issues = { addIssue(issue: { code: "custom"; message: string; path?: PropertyKey[]; params: Refusal }): void };

/**
 * Refuses a value inside a zod transform or superRefine: the issue becomes a finding of this definition at the value,
 * or at a key below it. Gives what a transform returns for a refused value.
 */
export function refuse(
  issues: Issues,
  finding: FindingDef,
  facts: Readonly<Record<string, Quantity>> = {},
  path: readonly (string | number)[] = [],
): never {
  issues.addIssue({ code: "custom", message: finding.code, path: [...path], params: { finding, facts } });
  return z.NEVER;
}

/** A value as it stood in the file, for a finding: short, on one line. */
export function asWritten(value: unknown): string {
  const written = typeof value === "string" ? value : (JSON.stringify(value) ?? "nothing");
  const line = written.replace(/\s+/g, " ").trim();
  return line === "" ? "nothing" : line.length > 60 ? `${line.slice(0, 57)}...` : line;
}

/** Whether what a zod issue carries comes from `refuse`. */
export function isRefusal(params: unknown): params is Refusal {
  return typeof params === "object" && params !== null && "finding" in params && "facts" in params;
}
