import { readFileSync } from "node:fs";
import { parseDocument } from "yaml";
import type { Finding } from "../../src/input/finding.js";
import { parseJob } from "../../src/job/parse.js";
import type { Plan } from "../../src/model/build.js";
import type { Job } from "../../src/model/job.js";
import type { Feature, Part } from "../../src/model/part.js";
import type { Shop } from "../../src/model/shop.js";
import { kinds } from "../../src/pieces/kinds.js";
import { planJob } from "../../src/plan/plan.js";
import { starterShop } from "../../src/shop/starter.js";

export const estate = readFileSync("templates/estate-cargo.yaml", "utf8");

/** One value changed in a job's text: where, and what to put there (undefined takes it out). */
export type Change = readonly [path: readonly (string | number)[], value: unknown];

export type Planned = {
  readonly job: Job;
  readonly shop: Shop;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
};

export function changed(source: string, changes: readonly Change[]): string {
  const document = parseDocument(source);
  for (const [path, value] of changes) {
    if (value === undefined) document.deleteIn(path);
    else document.setIn(path, document.createNode(value));
  }
  return document.toString();
}

/** The estate starter with some values changed, parsed and planned with the built-in shop. */
export function planned(changes: readonly Change[] = [], shop: Shop = starterShop()): Planned {
  const { value: job, findings } = parseJob(changed(estate, changes), "estate-cargo.yaml", kinds);
  if (job === undefined) throw new Error(`not a job: ${findings.map((finding) => finding.code).join(", ")}`);
  const outcome = planJob(job, shop, kinds);
  return { job, shop, plan: outcome.value!, findings: [...findings, ...outcome.findings] };
}

export function partNamed({ plan }: Planned, id: string): Part {
  const part = plan.built.parts.find((candidate) => candidate.id === id);
  if (part === undefined) throw new Error(`no part ${id}; there are ${plan.built.parts.map((p) => p.id).join(", ")}`);
  return part;
}

export function featureNamed(part: Part, name: string): Feature {
  const feature = part.features.find((candidate) => candidate.id === `${part.id}:${name}`);
  if (feature === undefined) throw new Error(`no feature ${name} in ${part.id}`);
  return feature;
}

export const codesOf = ({ findings }: Planned) => findings.map((finding) => finding.code);
