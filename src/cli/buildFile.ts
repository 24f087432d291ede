import { basename } from "node:path";
import { buildJob, usualOptions } from "../flow/build.js";
import type { Locate } from "../input/finding.js";
import { atTop } from "../input/textFile.js";
import { acceptedFileOf, readAcceptedLayout } from "../job/acceptedLayout.js";
import type { Build } from "../model/build.js";
import type { NestResult } from "../nest/engine.js";
import type { NestTask } from "../nest/nest.js";
import { searchHere } from "../nest/search.js";
import { kinds } from "../pieces/kinds.js";
import type { Conclusion } from "./conclude.js";
import { loadJob } from "./load.js";

/** What the commands that work on a job file take. */
export type JobOptions = {
  readonly shop?: string;
  readonly json?: boolean;
  readonly seed?: number;
  /** For each search of the nest; the last one for all further ones. */
  readonly iterations?: readonly number[];
  readonly anew?: boolean;
};

/** Searches for one layout after another. */
export type Searching = (task: NestTask) => Promise<NestResult>;

/** Reads a job file, and the layout that was accepted for it, and builds it. */
export async function buildFile(
  file: string,
  options: JobOptions,
  search?: Searching,
): Promise<Conclusion & { readonly build: Build | undefined }> {
  const { job, shop, findings, reading } = await loadJob(file, options);
  if (job === undefined || shop === undefined) return { build: undefined, findings, reading, usable: false };
  const { seed = usualOptions.seed, iterations = [usualOptions.iterations] } = options;
  const accepted = options.anew ? undefined : await readAcceptedLayout(file);
  const built = await buildJob(job, shop, kinds, {
    seed,
    iterations: iterations[0]!,
    search: search ?? (iterations.length > 1 ? countedSearch(seed, iterations) : undefined),
    accepted: accepted?.value,
    found: [...findings, ...(accepted?.findings ?? [])],
  });
  return {
    build: built.value,
    findings: built.findings,
    reading: { ...reading, locate: withLayoutFile(file, reading.locate) },
    usable: true,
  };
}

/** Findings about the accepted layout's file are placed at its top. */
function withLayoutFile(jobFile: string, locate: Locate | undefined): Locate | undefined {
  const path = acceptedFileOf(jobFile);
  return locate && ((at) => (at.file === basename(path) ? atTop({ ...at, file: path }) : locate(at)));
}

const countedSearch =
  (seed: number, iterations: readonly number[]): Searching =>
  (task) =>
    Promise.resolve(searchHere({ ...task.order, seed, iterations: iterations[task.nth] ?? iterations.at(-1)! }));
