import type { FindingDef } from "../../input/finding.js";

export const notOurFile: FindingDef = {
  code: "output-not-ours",
  severity: "error",
  words: "files of your own lie where this would write, so nothing was written: {found}",
  next: "move them away, or choose another folder with --out",
  explain:
    "The output folder keeps a record of the files that the tool wrote in it. A file that is not in the record is yours, and is never replaced.",
};

export const pathLeaves: FindingDef = {
  code: "output-leaves-folder",
  severity: "error",
  words: "links, or files where folders should be, lie in the way, so nothing was written: {found}",
  next: "move them away, or choose another folder with --out",
  explain:
    "A link inside the output folder may lead anywhere. Files are written, replaced and removed inside the folder only, so a path that goes through a link is refused.",
};

export const recordUnreadable: FindingDef = {
  code: "output-record",
  severity: "error",
  words: "the record of what was written in {folder} cannot be read, so nothing was written: {found}",
  next: "choose another folder with --out, or empty this one",
  explain:
    "The record tells files of the tool from your own. Without it every file counts as yours. If a run died here, the files it had set aside are in the record's folder old.",
};

export const notAFolder: FindingDef = {
  code: "output-not-a-folder",
  severity: "error",
  words: "{folder} is not a folder",
  next: "name a folder with --out; it is made if it is not there",
  explain: "Results are a set of files in a folder.",
};

export const notWritten: FindingDef = {
  code: "output-not-written",
  severity: "error",
  words: "{folder} could not be written: {why}",
  next: "{hint}",
  explain:
    "The files of a folder are replaced as a set. Where one of them cannot be written, all are put back as they were; where even that fails, the next run does it.",
};

export const changedByHand: FindingDef = {
  code: "output-changed-by-hand",
  severity: "warning",
  words: "{path} was changed by hand since it was written; your version is kept as {beside}",
  next: "bring what you changed into the job file, or rename your version so that nobody cuts from the wrong one",
  explain: "A file that the tool wrote and you changed is neither lost nor mixed with the new set: it is kept beside.",
};

export const runUndone: FindingDef = {
  code: "output-run-undone",
  severity: "note",
  words: "an earlier run died while it replaced the files in {folder}; what it had begun was undone first",
  next: "nothing to do",
  explain: "A journal in the folder says what a run is about to do. The next run reads it and puts everything back.",
};

export const outputFindings: readonly FindingDef[] = [
  notOurFile,
  pathLeaves,
  recordUnreadable,
  notAFolder,
  notWritten,
  changedByHand,
  runUndone,
];
