import { type Finding, type FindingDef, type Outcome, raise } from "../input/finding.js";
import type { PartProcess, Plan, Process } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { rowOf } from "../shop/lookups.js";
import { cornerLeftToBench, cornerTooTight } from "./corners.js";
import { gapOf } from "./gap.js";
import { handOf, withBestBits } from "./hand/hand.js";
import { overMachine, partOverMachine, ripTooWide } from "./machineLimits.js";
import { type Way, wayOf } from "./method.js";
import { bitTooShort, noBitFits, toolToBuy } from "./missing.js";
import { noPinBit, registrationsOf } from "./pins.js";
import { bitOverRpm, overRpm } from "./rpm.js";
import { shareBits } from "./shareBits.js";
import { sidesOf } from "./side.js";
import { worksOf } from "./tools.js";
import { turnsOf } from "./turns.js";

export const noMachine: FindingDef = {
  code: "no-machine",
  severity: "warning",
  words: "parts are to be cut by CNC, but the shop file describes no machine",
  next: "describe the bed under cnc in the shop file, or cut by saw or by hand",
  explain:
    "Without a bed size it cannot be said whether parts and sheets lie on the machine, and the usual 2 mm are left beside " +
    "the bit.",
};

export const processFindings: readonly FindingDef[] = [
  cornerTooTight,
  cornerLeftToBench,
  bitTooShort,
  noBitFits,
  toolToBuy,
  ripTooWide,
  partOverMachine,
  noMachine,
  noPinBit,
  bitOverRpm,
];

/** How each part is cut: method, sides, tools, the gap it needs and the turns it may have on a sheet. */
export function processOf(job: Job, shop: Shop, plan: Plan): Outcome<Process> {
  const ways = plan.built.parts.map((part) => ({ part, ...wayOf(job, shop, part) }));
  const widest = shareBits(shop, ways);
  const each = ways.map((way) => processPart(job, shop, way, widest.get(way.part.id) ?? 0));
  const parts = each.map(({ process }) => process);
  const missing = shop.cnc === undefined && parts.some((process) => process.method === "cnc");
  const findings = [
    ...(missing ? [raise(noMachine, { at: [{ file: shop.file, path: [] }] })] : []),
    ...each.flatMap((one) => one.findings),
  ];
  const built = plan.built.parts;
  const { registration, findings: unpinned } = registrationsOf(job, shop, built, parts);
  const hand = handOf(shop, built, parts);
  return {
    value: { parts: withBestBits(parts, built, hand), registration, hand },
    findings: [...findings, ...unpinned],
  };
}

function processPart(
  job: Job,
  shop: Shop,
  { part, method, why }: Way & { readonly part: Part },
  widest: number,
): { readonly process: PartProcess; readonly findings: readonly Finding[] } {
  const sides = sidesOf(part, method === "cnc" ? (shop.cnc?.["second side"] ?? "hand") : "hand");
  const { work, through, findings } = worksOf(shop, part, { method, sides }, widest);
  const stock = rowOf(job.boards, part.board)?.stock;
  const hasGrain = stock !== undefined && (rowOf(shop.boards, stock)?.grain ?? false);
  const process: PartProcess = {
    part: part.id,
    method,
    why,
    sides,
    gap: gapOf(shop, method, through),
    turns: turnsOf(part, method, hasGrain, sides[0] === "back"),
    work,
  };
  return { process, findings: [...findings, ...overMachine(shop, part, process), ...overRpm(shop, part, process)] };
}
