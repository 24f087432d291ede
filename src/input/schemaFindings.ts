import type { FindingDef } from "./finding.js";

export const unknownKey: FindingDef = {
  code: "unknown-key",
  severity: "error",
  words: "{found} is not a key that means anything here[; did you mean {nearest}?]",
  next: "use {allowed}, or delete the line",
  explain:
    "Every key has to be one that is known at its place, so that a slip of the finger is told and not passed over in silence: a cut-out that nobody read would be cut wrong.",
};

export const missingKey: FindingDef = {
  code: "missing-key",
  severity: "error",
  words: "{key} is missing",
  next: "add the line {key}: with {allowed}",
  explain: "This key has no default, because nothing sensible can be assumed for it.",
};

export const nothingWritten: FindingDef = {
  code: "nothing-written",
  severity: "error",
  words: "nothing is written behind {key}",
  next: "write {allowed}, or delete the line; a text that begins with # needs quotes",
  explain:
    "A key with nothing behind its colon says nothing. A # with a space before it begins a comment, so that a screw like #8 x 1 vanishes unless it stands in quotes: '#8 x 1'.",
};

export const wrongType: FindingDef = {
  code: "wrong-type",
  severity: "error",
  words: "{found} stands where {allowed} should",
  next: "write {allowed}[; {hint}]",
  explain:
    "Each key takes one kind of value: a text, a number, true or false, a list in square brackets, or further keys indented below it.",
};

export const notOneOf: FindingDef = {
  code: "not-one-of",
  severity: "error",
  words: "{found} is not one of the words that {key} takes[; did you mean {nearest}?]",
  next: "use {allowed}",
  explain: "This key takes one of a few words, spelled as listed.",
};

export const tooSmall: FindingDef = {
  code: "too-small",
  severity: "error",
  words: "{found} is less than {least}",
  next: "write {least} or more",
  explain: "The value is below the least that makes sense here.",
};

export const tooLarge: FindingDef = {
  code: "too-large",
  severity: "error",
  words: "{found} is more than {most}",
  next: "write {most} or less",
  explain: "The value is above the most that makes sense here.",
};

export const tooFew: FindingDef = {
  code: "too-few",
  severity: "error",
  words: "{key} holds fewer than {least}",
  next: "give {least} or more",
  explain:
    "The list or text is shorter than it has to be: a place takes two numbers, an outline at least three corners.",
};

export const tooMany: FindingDef = {
  code: "too-many",
  severity: "error",
  words: "{key} holds more than {most}",
  next: "give {most} or fewer",
  explain: "The list or text is longer than it may be: a place takes two numbers, a title has to fit into its box.",
};

export const doesNotFit: FindingDef = {
  code: "does-not-fit",
  severity: "error",
  words: "{found} does not fit behind {key}[: {reason}]",
  next: "look up how {key} is written",
  explain: "The value has the right kind but not the form that this key needs.",
};

/** Everything that the shape of a file can be refused for. */
export const schemaFindings: readonly FindingDef[] = [
  unknownKey,
  missingKey,
  nothingWritten,
  wrongType,
  notOneOf,
  tooSmall,
  tooLarge,
  tooFew,
  tooMany,
  doesNotFit,
];
