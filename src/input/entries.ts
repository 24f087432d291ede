import { below, type Finding, type Origin, type Outcome } from "./finding.js";
import { isMap } from "./yaml.js";

/** The entries of a map that can be used, the names of those that cannot, and what is wrong with them. */
export type Entries<T> = {
  readonly values: Readonly<Record<string, T>>;
  readonly withheld: readonly string[];
  readonly findings: readonly Finding[];
};

/**
 * Reads the entries of a map one by one, so that a mistake in one withholds that one only. Nothing, and what is no map,
 * has no entries: that it should be a map is for the schema around it to say.
 */
export function readEntries<T>(
  map: unknown,
  at: Origin,
  read: (entry: unknown, at: Origin, name: string) => Outcome<T>,
): Entries<T> {
  if (!isMap(map)) return { values: {}, withheld: [], findings: [] };
  const entries = Object.entries(map).map(([name, entry]) => ({ name, read: read(entry, below(at, name), name) }));
  const values = entries.flatMap(({ name, read: { value } }): [string, T][] =>
    value === undefined ? [] : [[name, value]],
  );
  return {
    values: Object.fromEntries(values),
    withheld: entries.filter(({ read: { value } }) => value === undefined).map(({ name }) => name),
    findings: entries.flatMap(({ read: { findings } }) => findings),
  };
}
