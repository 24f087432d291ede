import { z } from "zod";
import { type Finding, type FindingDef, type Origin, raise, text } from "../input/finding.js";

/**
 * What a name in the job file may look like: up to 40 letters, digits, spaces and signs, none of those that ids, file
 * names and lists are made with. A pattern that every dialect of regular expressions knows.
 */
const taken = '/\\\\:|*?"<>,\\[\\]{}#&%\\u0000-\\u001f';
export const namePattern = `^(?!.*[ .]$)[^ .'${taken}][^${taken}]{0,39}$`;

const shape = new RegExp(namePattern, "u");

export const badName: FindingDef = {
  code: "bad-name",
  severity: "error",
  words: "{found} cannot be a name",
  next: "use up to 40 letters, digits, spaces and dashes",
  explain:
    'Names of pieces, boards, drivers and so on stand in file names and on labels. They begin with a letter or digit, do not end with a space or full stop, and hold none of / \\ : | * ? " < > , [ ] { } # & %.',
};

export const namesAlike: FindingDef = {
  code: "names-alike",
  severity: "error",
  words: "{found} and {other} differ in capitals only",
  next: "give one of them another name",
  explain: "Names stand in file names, and on many computers Box and box are the same file.",
};

/** A name as a value or as a key of a map. */
export const name = () => z.string().regex(shape);

/** A short text of the fabricator's own. */
export const words = (most: number) => z.string().trim().min(1).max(most);

/** What is wrong with the names of a map; `at` is the map. */
export function nameFindings(names: readonly string[], at: Origin): readonly Finding[] {
  const seen = new Map<string, string>();
  return names.flatMap((found) => {
    const origin: Origin = { file: at.file, path: [...at.path, found], token: "key" };
    if (!shape.test(found)) return [raise(badName, { at: [origin], facts: { found: text(found) } })];
    const folded = found.normalize("NFC").toLowerCase();
    const other = seen.get(folded);
    seen.set(folded, other ?? found);
    return other === undefined
      ? []
      : [raise(namesAlike, { at: [origin], facts: { found: text(found), other: text(other) } })];
  });
}
