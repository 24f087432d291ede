import { existsSync } from "node:fs";
import { dirname, isAbsolute, join } from "node:path";
import type { Finding, Locate } from "../input/finding.js";
import { readJobFile } from "../job/read.js";
import type { Job } from "../model/job.js";
import type { Shop } from "../model/shop.js";
import { kinds } from "../pieces/kinds.js";
import { readShopFile } from "../shop/read.js";
import { starterShop } from "../shop/starter.js";
import { findingDefs } from "./findingDefs.js";
import type { Reading } from "./report.js";

/** A job with its shop; the job or the shop is absent where its file cannot be used, and the findings say why. */
export type Loaded = {
  readonly job: Job | undefined;
  readonly shop: Shop | undefined;
  readonly findings: readonly Finding[];
  readonly reading: Reading;
};

/**
 * Reads a job file and the shop file that goes with it: the one named by hand, else the one that the job names, from
 * the job file's own folder, else `shop.yaml` beside the job, else the built-in starter.
 */
export async function loadJob(file: string, options: { readonly shop?: string | undefined }): Promise<Loaded> {
  const read = await readJobFile(file, kinds);
  const job = read.value;
  const reading = { defs: findingDefs, show: job?.show ?? { unit: "mm" as const }, locate: read.locate };
  if (job === undefined) return { job, shop: undefined, findings: read.findings, reading };

  const shopFile = shopFileOf(job, file, options.shop);
  if (shopFile === undefined) return { job, shop: starterShop(), findings: read.findings, reading };
  const shop = await readShopFile(shopFile);
  const locate: Locate = (at) => (at.file === job.file ? read.locate(at) : shop.locate(at));
  return { job, shop: shop.value, findings: [...read.findings, ...shop.findings], reading: { ...reading, locate } };
}

/** undefined: the built-in starter. */
export function shopFileOf(job: Job | undefined, jobFile: string, byHand: string | undefined): string | undefined {
  if (byHand !== undefined) return byHand;
  if (job?.shop !== undefined) return isAbsolute(job.shop) ? job.shop : join(dirname(jobFile), job.shop);
  const beside = join(dirname(jobFile), "shop.yaml");
  return existsSync(beside) ? beside : undefined;
}
