import type { FindingDef } from "./finding.js";

export const emptyFile: FindingDef = {
  code: "empty-file",
  severity: "error",
  words: "there is nothing in this file",
  next: "start from a starter file, or write version: 1 on the first line",
  explain: "The file holds nothing, or only comments. A job starts best from one of the starter files.",
};

export const notAMap: FindingDef = {
  code: "not-a-map",
  severity: "error",
  words: "the file is not a list of keys and values: it begins with {found}",
  next: "write one key, a colon and its value a line, such as version: 1",
  explain:
    "A job or shop file is a YAML map: keys with values, one idea a line. A file that begins otherwise is most likely another kind of file with this name.",
};

export const notPlainText: FindingDef = {
  code: "not-plain-text",
  severity: "error",
  words: "this file holds bytes that are not text",
  next: "open it in a plain text editor and save it as UTF-8 text",
  explain:
    "A job file is plain text in UTF-8. A document of a word processor, a picture or a damaged file cannot be read.",
};

export const duplicateKey: FindingDef = {
  code: "duplicate-key",
  severity: "error",
  words: "the key {found} stands twice in the same place, the first time on line {first}",
  next: "give one of the two another name, or delete it",
  explain: "Two values under one name leave open which of them holds, so neither is guessed.",
};

export const forbiddenKey: FindingDef = {
  code: "forbidden-key",
  severity: "error",
  words: "{found} cannot be a key",
  next: "use a plain word as the key",
  explain: "Keys are words. A list, a map, nothing at all or a name that computers keep for themselves is not taken.",
};

export const tabIndent: FindingDef = {
  code: "tab-indent",
  severity: "error",
  words: "this line is indented with a tab",
  next: "indent with spaces: two for each level",
  explain: "YAML takes only spaces before a key, because a tab is as wide as each editor likes.",
};

export const unknownAlias: FindingDef = {
  code: "unknown-alias",
  severity: "error",
  words: "*{found} repeats something that was never marked[: did you mean *{nearest}?]",
  next: "mark what it repeats with &{found} further up, or put the text into quotes",
  explain:
    "A star before a word repeats what an earlier & marked with the same word. A text that begins with a star needs quotes.",
};

export const tooMuchRepeated: FindingDef = {
  code: "too-much-repeated",
  severity: "error",
  words: "the repeated pieces of this file add up to more than {most} values",
  next: "write the values out, or repeat less with *",
  explain:
    "Repeats within repeats grow a small file into one that fills the memory. No job comes near this limit: the file is damaged or meant to harm.",
};

export const tooDeep: FindingDef = {
  code: "too-deep",
  severity: "error",
  words: "the file goes more than {most} levels deep",
  next: "check the brackets and the indentation around here",
  explain: "A job needs about six levels. Many more come from a damaged file or from a repeat that holds itself.",
};

export const severalDocuments: FindingDef = {
  code: "several-documents",
  severity: "error",
  words: "a second document begins here, behind the three dashes",
  next: "keep one job in a file: move the rest to a file of its own, or delete the dashes",
  explain: "Three dashes begin a new document in YAML. A file holds one job or one shop.",
};

export const unreadableYaml: FindingDef = {
  code: "unreadable-yaml",
  severity: "error",
  words: "the file cannot be read here: {reason}",
  next: "look at this line and the one above: {allowed}",
  explain:
    "The file has to be YAML before anything in it can be checked: a key, a colon and a space, a value; what belongs together equally far indented; quotes and brackets closed. Values that hold a colon followed by a space, or that begin with # * & ! @ % or a quote, need quotes around the whole.",
};

/** Everything a file can be refused for before its keys are looked at. */
export const yamlFindings: readonly FindingDef[] = [
  emptyFile,
  notAMap,
  notPlainText,
  duplicateKey,
  forbiddenKey,
  tabIndent,
  unknownAlias,
  tooMuchRepeated,
  tooDeep,
  severalDocuments,
  unreadableYaml,
];
