import type { ZodType } from "zod";
import { type Entries, readEntries } from "../input/entries.js";
import type { Origin, Outcome } from "../input/finding.js";
import { readWith } from "../input/issues.js";
import { isMap } from "../input/yaml.js";
import { nameFindings } from "./names.js";

/** Entries of the job: one whose name will not do is withheld like one with a mistake in it. */
export function readNamed<T>(map: unknown, at: Origin, read: (entry: unknown, at: Origin) => Outcome<T>): Entries<T> {
  const bad = nameFindings(isMap(map) ? Object.keys(map) : [], at);
  return readEntries(map, at, (entry, place, name) => {
    const ofName = bad.filter((finding) => finding.at[0]?.path.at(-1) === name);
    const { value, findings } = read(entry, place);
    return { value: ofName.length > 0 ? undefined : value, findings: [...ofName, ...findings] };
  });
}

/** Entries that all have one schema. */
export function readEach<T>(schema: ZodType<T>, map: unknown, at: Origin): Entries<T> {
  return readNamed(map, at, (entry, place) => readWith(schema, entry, place));
}
