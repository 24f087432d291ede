import { basename } from "node:path";
import type { Located } from "../input/finding.js";
import { atTop, readTextFile } from "../input/textFile.js";
import type { Job } from "../model/job.js";
import type { PieceKind } from "../model/piece.js";
import { parseJob } from "./parse.js";

/**
 * Reads a job file from the disk. What is made of it knows the file by its name alone, so that it is the same wherever
 * the folder lies; `locate` gives the path by which it was asked for.
 */
export async function readJobFile(path: string, kinds: readonly PieceKind[]): Promise<Located<Job>> {
  const { value: source, findings } = await readTextFile(path);
  if (source === undefined) return { value: undefined, findings, locate: atTop };
  const read = parseJob(source, basename(path), kinds);
  return { ...read, locate: (at) => ({ ...read.locate(at), file: path }) };
}
