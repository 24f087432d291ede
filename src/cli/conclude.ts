import { type Finding, hasErrors } from "../input/finding.js";
import { type Exit, exit } from "./exit.js";
import { asData, countsOf, inOrder, type Reading, reportOf } from "./report.js";
import { painter, type Terminal } from "./terminal.js";

export type Conclusion = {
  readonly findings: readonly Finding[];
  readonly reading: Reading;
  /** False where a file could not be used at all. */
  readonly usable: boolean;
};

/**
 * Ends a command: findings to the error stream and the result to the output as text, or both as one JSON value to the
 * output. `lines` and `data` are the result, empty where there is none.
 */
export function conclude(
  terminal: Terminal,
  { findings, reading, usable }: Conclusion,
  result: { readonly lines: readonly string[]; readonly data: Readonly<Record<string, unknown>> },
  json: boolean | undefined,
): Exit {
  if (json) {
    const told = inOrder(findings, reading).map((finding) => asData(finding, reading));
    terminal.out(JSON.stringify({ version: 1, ...result.data, findings: told, counts: countsOf(findings) }, null, 1));
  } else {
    terminal.err(reportOf(findings, reading, painter(terminal.colour)));
    if (result.lines.length > 0) terminal.out(result.lines.join("\n"));
  }
  if (!usable) return exit.unusable;
  return hasErrors(findings) ? exit.errors : exit.done;
}

export const nothing = { lines: [], data: {} } as const;
