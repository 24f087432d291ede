import { buildJob, usualOptions } from "../flow/build.js";
import type { Build } from "../model/build.js";
import { kinds } from "../pieces/kinds.js";
import type { Conclusion } from "./conclude.js";
import { loadJob } from "./load.js";

/** What the commands that work on a job file take. */
export type JobOptions = {
  readonly shop?: string;
  readonly json?: boolean;
  readonly seed?: number;
  readonly iterations?: number;
};

/** Reads a job file and builds it. */
export async function buildFile(
  file: string,
  options: JobOptions,
): Promise<Conclusion & { readonly build: Build | undefined }> {
  const { job, shop, findings, reading } = await loadJob(file, options);
  if (job === undefined || shop === undefined) return { build: undefined, findings, reading, usable: false };
  const { seed = usualOptions.seed, iterations = usualOptions.iterations } = options;
  const built = await buildJob(job, shop, kinds, { seed, iterations, found: findings });
  return { build: built.value, findings: built.findings, reading, usable: true };
}
