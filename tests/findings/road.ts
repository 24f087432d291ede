import { findingDefs } from "../../src/cli/findingDefs.js";
import { buildJob } from "../../src/flow/build.js";
import type { Finding, Locate } from "../../src/input/finding.js";
import { withShop } from "../../src/job/coverings.js";
import { parseJob } from "../../src/job/parse.js";
import type { Job } from "../../src/model/job.js";
import type { Shop } from "../../src/model/shop.js";
import { kinds } from "../../src/pieces/kinds.js";
import { runChecks } from "../../src/plan/checks/checks.js";
import { planJob } from "../../src/plan/plan.js";
import { processOf } from "../../src/process/process.js";
import { parseShop } from "../../src/shop/parse.js";
import { starterShop } from "../../src/shop/starter.js";
import { type Change, changed, estate } from "../pieces/planned.js";

/** A stage of the road from a file to sheets; a pair goes no further than it must. */
export type Stage = "read" | "plan" | "checks" | "process" | "nest";

/** What a job raised, and how its places are found in the files that were read, each by its name. */
export type Told = {
  readonly findings: readonly Finding[];
  readonly locate: Locate;
  readonly files: Readonly<Record<string, string>>;
};

/** A job: values of the estate starter changed, or a whole text; and lines of a shop file, laid over the built-in one. */
export type JobWay = { readonly job: readonly Change[] | string; readonly shop?: string };
/** The check called directly, where no job leads to it. */
export type Call = () => readonly Finding[] | Promise<readonly Finding[]>;

type Pair<Way> = { readonly raises: Way; readonly spares: Way };

/** A job that raises the code, at this place in the file, and one just short of it. */
export type JobPair = Pair<JobWay> & {
  /** The path of the finding's first place as the report shows it; where a file has no paths, the text that stands there. */
  readonly at: string;
  readonly upTo: Stage;
};
/** A call that raises it and one that does not, and why there is no job. */
export type CallPair = Pair<Call> & { readonly why: string };
export type Entry = JobPair | CallPair;
export type Table = Readonly<Record<string, Entry>>;

export const jobFile = "estate-cargo.yaml";
export const shopFile = "bench.yaml";

/** A job pair whose jobs differ from the starter by these changes. */
export const pairUpTo =
  (upTo: Stage) =>
  (
    at: string,
    raises: JobWay["job"],
    spares: JobWay["job"],
    shops: { raises?: string; spares?: string } = {},
  ): JobPair => ({
    at,
    upTo,
    raises: { job: raises, ...(shops.raises !== undefined && { shop: shops.raises }) },
    spares: { job: spares, ...(shops.spares !== undefined && { shop: shops.spares }) },
  });

/** The estate starter with one stretch of its text replaced. */
export function edited(from: string, to: string): string {
  if (estate.split(from).length !== 2) throw new Error(`the starter does not hold this once: ${from}`);
  return estate.replace(from, () => to);
}

/** Sends a job down the road as far as a stage, as the command does. */
export async function travel({ job, shop }: JobWay, upTo: Stage): Promise<Told> {
  const source = typeof job === "string" ? job : changed(estate, job);
  const read = parseJob(source, jobFile, kinds);
  const written = shop === undefined ? undefined : `version: 1\nunits: mm\n${shop}\n`;
  const bench = written === undefined ? undefined : parseShop(written, shopFile);
  const findings = [...read.findings, ...(bench?.findings ?? [])];
  const locate: Locate = (at) => (at.file === shopFile && bench ? bench : read).locate(at);
  const files = { [jobFile]: source, ...(written !== undefined && { [shopFile]: written }) };
  const usable = bench === undefined ? starterShop() : bench.value;
  if (read.value === undefined || usable === undefined || upTo === "read") return { findings, locate, files };
  return { findings: [...findings, ...(await beyondReading(read.value, usable, upTo))], locate, files };
}

async function beyondReading(asRead: Job, shop: Shop, upTo: Stage): Promise<readonly Finding[]> {
  if (upTo === "nest") return (await buildJob(asRead, shop, kinds, { seed: 1, iterations: 20 })).findings;
  const { value: job = asRead, findings } = withShop(asRead, shop);
  const planned = planJob(job, shop, kinds);
  const plan = planned.value!;
  const found = [...findings, ...planned.findings];
  if (upTo === "checks") return [...found, ...(await runChecks(job, shop, plan))];
  return upTo === "process" ? [...found, ...processOf(job, shop, plan).findings] : found;
}

export const defOf = (finding: Finding) => findingDefs.get(finding.code)!;
