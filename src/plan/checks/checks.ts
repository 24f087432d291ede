import type { Finding } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Shop } from "../../model/shop.js";
import { chamferReads } from "./chamferReads.js";
import { channelsFree } from "./channelsFree.js";
import { clearOfObstacles } from "./clearOfObstacles.js";
import { driverData } from "./driverData.js";
import { driverFits } from "./driverFits.js";
import { fasteners } from "./fasteners.js";
import { holes } from "./holes.js";
import { insideClosed } from "./insideClosed.js";
import { insideSpace } from "./insideSpace.js";
import { netVolume } from "./netVolume.js";
import { noScrews } from "./noScrews.js";
import { notchCorner } from "./notchCorner.js";
import { partsApart } from "./partsApart.js";
import { screwsBehind } from "./screwsBehind.js";
import { throughOpening } from "./throughOpening.js";
import { tubesFit } from "./tubesFit.js";
import { wrapNeedsGroove } from "./wrapNeedsGroove.js";

/** Every check of a plan, in the order in which its findings are told. */
export const checks: readonly Check[] = [
  netVolume,
  insideClosed,
  partsApart,
  insideSpace,
  clearOfObstacles,
  driverData,
  driverFits,
  tubesFit,
  channelsFree,
  throughOpening,
  fasteners,
  holes,
  screwsBehind,
  noScrews,
  wrapNeedsGroove,
  notchCorner,
  chamferReads,
];

/**
 * Everything the checks find in a plan, in the order of the list. Solids are loaded only where a check needs them, and
 * those that do not need them run meanwhile.
 */
export async function runChecks(job: Job, shop: Shop, plan: Plan): Promise<readonly Finding[]> {
  return (await Promise.all(checks.map((check) => check.run(job, shop, plan)))).flat();
}
