import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Finding } from "../../src/input/finding.js";
import { acceptedFileOf, acceptedText, readAcceptedLayout } from "../../src/job/acceptedLayout.js";
import { acceptedGroups } from "../../src/nest/accepted.js";
import { nestParts } from "../../src/nest/nest.js";
import { inScratch } from "../cli/output/tree.js";
import { blankPart, board, type Order, orderOf, plain } from "../property/nestOrders.js";
import type { Table } from "./road.js";

const options = { seed: 1, iterations: 1 };

const panel = (length: number): Order =>
  orderOf(
    [blankPart("a", "one", plain(length, 100))],
    { one: board({ sheets: [{ length: 900, width: 600, trim: 5 }] }) },
    () => ({}),
  );

const acceptedOf = ({ job, shop, plan, process }: Order) =>
  acceptedGroups(plan, process, nestParts(job, shop, plan, process, options).value!);

/** What is found when a panel this long is laid after one of 300 mm was accepted. */
function laidAfter(length: number): readonly Finding[] {
  const { job, shop, plan, process } = panel(length);
  const accepted = { version: 1 as const, sum: "", groups: acceptedOf(panel(300)) };
  return nestParts(job, shop, plan, process, { ...options, accepted }).findings;
}

const reading = (words: string) =>
  inScratch(async (folder) => {
    const job = join(folder, "job.yaml");
    writeFileSync(acceptedFileOf(job), words);
    return (await readAcceptedLayout(job)).findings;
  });

/** What is found of a layout that was accepted. */
export const acceptedTable: Table = {
  "accepted-layout-unreadable": {
    why: "it is about a file beside the job",
    raises: () => reading(acceptedText(acceptedOf(panel(300))).replace("900", "901")),
    spares: () => reading(acceptedText(acceptedOf(panel(300)))),
  },
  "accepted-layout-stale": {
    why: "it is about a file beside the job",
    raises: () => laidAfter(300.01),
    spares: () => laidAfter(300),
  },
};
