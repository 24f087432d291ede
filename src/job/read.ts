import type { Locate, Located } from "../input/finding.js";
import { atTop, readTextFile } from "../input/textFile.js";
import type { Job } from "../model/job.js";
import type { PieceKind } from "../model/piece.js";
import { parseJob } from "./parse.js";

/** Reads a job file from the disk. */
export async function readJobFile(
  path: string,
  kinds: readonly PieceKind[],
): Promise<Located<{ readonly job: Job; readonly locate: Locate }>> {
  const { value: source, findings } = await readTextFile(path);
  return source === undefined ? { value: undefined, findings, locate: atTop } : parseJob(source, path, kinds);
}
