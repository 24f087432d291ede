import { acceptedTable } from "./accepted.js";
import { checksTable } from "./checks.js";
import { filesTable } from "./files.js";
import { jobTable } from "./job.js";
import { machiningTable } from "./machining.js";
import { piecesTable } from "./pieces.js";
import { processTable } from "./process.js";
import type { Table } from "./road.js";
import { textTable } from "./text.js";

/** For every finding what raises it and what is just short of it, in the order in which a run meets them. */
export const tables: readonly Table[] = [
  filesTable,
  textTable,
  jobTable,
  piecesTable,
  checksTable,
  processTable,
  machiningTable,
  acceptedTable,
];
