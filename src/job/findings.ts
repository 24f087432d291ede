import type { FindingDef } from "../input/finding.js";
import { outlineFindings } from "../input/outlineFindings.js";
import { acceptedUnreadable } from "./acceptedLayout.js";
import { unknownCovering } from "./coverings.js";
import { boltCircleAway, cutOutTooLarge } from "./driver.js";
import { badName, namesAlike } from "./names.js";
import { noPieces, unknownKind } from "./pieces.js";
import { unknownSide } from "./space.js";

/** Everything a job file can be refused for beside what every typed file can. */
export const jobFindings: readonly FindingDef[] = [
  badName,
  namesAlike,
  unknownKind,
  noPieces,
  ...outlineFindings,
  unknownSide,
  cutOutTooLarge,
  boltCircleAway,
  unknownCovering,
  acceptedUnreadable,
];
