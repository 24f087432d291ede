import { partsWithheld } from "../flow/withhold.js";
import type { FindingDef } from "../input/finding.js";
import { inputFindings } from "../input/inputFindings.js";
import { jobFindings } from "../job/findings.js";
import { machiningFindings } from "../machining/findings.js";
import { nestFindings } from "../nest/nest.js";
import { kinds } from "../pieces/kinds.js";
import { checks } from "../plan/checks/checks.js";
import { planFindings } from "../plan/plan.js";
import { measuredFindings } from "../process/measured.js";
import { processFindings } from "../process/process.js";
import { shopFindings } from "../shop/findings.js";
import { outputFindings } from "./output/findings.js";

/** The words of every finding that any stage can raise. */
export const allFindings: readonly FindingDef[] = [
  ...inputFindings,
  ...jobFindings,
  ...shopFindings,
  ...kinds.flatMap((kind) => kind.findings),
  ...planFindings,
  ...checks.flatMap((check) => check.findings),
  ...processFindings,
  ...measuredFindings,
  ...nestFindings,
  ...machiningFindings,
  partsWithheld,
  ...outputFindings,
];

/** The same, by code. Kinds of pieces may share a finding. */
export const findingDefs: ReadonlyMap<string, FindingDef> = new Map(allFindings.map((def) => [def.code, def]));
