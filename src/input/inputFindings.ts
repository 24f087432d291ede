import { doorFindings } from "./doorFindings.js";
import type { FindingDef } from "./finding.js";
import { schemaFindings } from "./schemaFindings.js";
import { textFileFindings } from "./textFile.js";
import { missingVersion, unknownVersion } from "./version.js";
import { yamlFindings } from "./yamlFindings.js";

/** Everything that a typed file can be refused for, whatever it is about. */
export const inputFindings: readonly FindingDef[] = [
  ...textFileFindings,
  ...yamlFindings,
  missingVersion,
  unknownVersion,
  ...schemaFindings,
  ...doorFindings,
];
