import { cautionsFor, closing } from "../../lists/cautions.js";
import type { Build } from "../../model/build.js";

/** What every file says of the job it belongs to. */
export function headLines({ job, hash }: Build): readonly string[] {
  return [
    [job.reference, job.title].filter(Boolean).join(", "),
    `units of this file: ${job.show.unit === "mm" ? "millimetres" : "inches"}`,
    "LATER layers are not for the machine: they are cut on the loose part or after glue-up",
    `build ${hash}`,
  ];
}

/** The cautions of cut files; the closing sentence stands once, after all of them. */
export function cautionLines(build: Build): readonly string[] {
  const sentences = cautionsFor(build, "cut file").map(({ sentence }) => sentence);
  return sentences.length > 0 ? [...sentences, closing] : [];
}
