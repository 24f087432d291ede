import { readdir, readFile, stat } from "node:fs/promises";
import { basename, dirname } from "node:path";
import { count, type FindingDef, type Locate, type Outcome, raise, text } from "./finding.js";
import { nearest } from "./nearest.js";

/** No job or shop file comes near this; a larger one is something else. Bytes. */
export const mostBytes = 1_000_000;

export const noSuchFile: FindingDef = {
  code: "no-such-file",
  severity: "error",
  words: "there is no file {found}[; did you mean {nearest}?]",
  next: "check the name and the folder",
  explain: "The file was not found under this name in this folder.",
};

export const notAFile: FindingDef = {
  code: "not-a-file",
  severity: "error",
  words: "{found} is not a file that can be read as text",
  next: "name the file itself, such as {found}/job.yaml",
  explain: "A folder, a device or a pipe was named where a file is needed.",
};

export const fileTooLarge: FindingDef = {
  code: "file-too-large",
  severity: "error",
  words: "{found} has {size} bytes; files of more than {most} are not read",
  next: "check that it is the file you mean",
  explain: "Jobs take a few thousand bytes. A file this large is most likely another one, so it is not even opened.",
};

export const unreadableFile: FindingDef = {
  code: "unreadable-file",
  severity: "error",
  words: "{found} cannot be read: {reason}",
  next: "check that you may read it and that no other program holds it",
  explain: "The system refused to hand out the file.",
};

export const notUtf8: FindingDef = {
  code: "not-utf8",
  severity: "error",
  words: "{found} is not text in UTF-8",
  next: "open it in a plain text editor and save it as UTF-8",
  explain: "Another encoding would turn degree signs, fractions and names into something else without a word.",
};

export const textFileFindings: readonly FindingDef[] = [noSuchFile, notAFile, fileTooLarge, unreadableFile, notUtf8];

/** The place of every finding about a file that could not be opened. */
export const atTop: Locate = ({ file }) => ({ file, line: 1, column: 1 });

/** The text of a file on the disk. What keeps it from being read is a finding. */
export async function readTextFile(path: string): Promise<Outcome<string>> {
  const refused = (def: FindingDef, facts = {}): Outcome<string> => ({
    value: undefined,
    findings: [raise(def, { at: [{ file: path, path: [] }], facts: { found: text(path), ...facts } })],
  });
  try {
    const about = await stat(path);
    if (!about.isFile()) return refused(notAFile);
    if (about.size > mostBytes) return refused(fileTooLarge, { size: count(about.size), most: count(mostBytes) });
    const value = decoded(await readFile(path));
    return value === undefined ? refused(notUtf8) : { value, findings: [] };
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "unknown";
    if (code !== "ENOENT" && code !== "ENOTDIR") return refused(unreadableFile, { reason: text(code) });
    const close = nearest(basename(path), await namesBeside(path));
    return refused(noSuchFile, close === undefined ? {} : { nearest: text(close) });
  }
}

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

async function namesBeside(path: string): Promise<readonly string[]> {
  try {
    return (await readdir(dirname(path))).sort();
  } catch {
    return [];
  }
}
