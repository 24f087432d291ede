import type { FindingDef } from "../input/finding.js";
import { shopCheckFindings } from "./checks.js";
import { offcutFindings } from "./offcutFindings.js";

export const noSuchRow: FindingDef = {
  code: "no-such-row",
  severity: "error",
  words: "{found} cannot be taken out: the built-in tables have no such row[; did you mean {nearest}?]",
  next: "use {allowed}, or delete the line",
  explain: "A row is taken out of the built-in tables with none behind its name. This name is not in them.",
};

/** What a shop file can be refused for beside what every typed file can. */
export const shopFindings: readonly FindingDef[] = [noSuchRow, ...offcutFindings, ...shopCheckFindings];
