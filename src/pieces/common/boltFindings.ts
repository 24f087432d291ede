import type { FindingDef } from "../../input/finding.js";

export const noBoltLength: FindingDef = {
  code: "no-bolt-length",
  severity: "error",
  words: "no stock length of {bolt} fits: its thread needs {least} or more, its hole takes {most} or less",
  next: "choose a longer insert, add a length to that bolt in the shop file, or use a thinner covering or gasket",
  explain:
    "The bolt must start while covering and gasket are loose, engage by its own diameter when they are clamped, and then stop 1 mm short of the bottom of its hole. No length on the shop's list does all three, so none is chosen.",
};

export const noInsertForThread: FindingDef = {
  code: "no-insert-for-thread",
  severity: "error",
  words: "the shop has no threaded insert for {thread}",
  next: "add one to the shop file, or use a bolt of another thread",
  explain: "A bolt goes into a threaded insert of its own thread, a row of the shop file.",
};
