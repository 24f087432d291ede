import type { Build } from "../../model/build.js";

/** Comments at the head of the file. */
export function notesOf({ job, hash }: Build, title: string): readonly string[] {
  return [title, job.title, `build ${hash}`];
}
