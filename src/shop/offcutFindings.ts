import type { FindingDef } from "../input/finding.js";

export const offcutSize: FindingDef = {
  code: "offcut-size",
  severity: "error",
  words: "offcut {name} is given by {found}",
  next: "give its length and its width; or, where it is no rectangle, its outline instead of both",
  explain:
    "An offcut is a rectangle, of a length and a width, or has any other form, as corners measured from its lower left " +
    "corner. An offcut with a mistake in it is left out; the others are used.",
};

export const noSuchTrueEdge: FindingDef = {
  code: "no-such-true-edge",
  severity: "error",
  words: "offcut {name} has no side called {found}[; did you mean {nearest}?]",
  next: "[use {allowed}, or name a side with side: at the corner before it][{rectangle}]",
  explain:
    "The true edge of an odd offcut is named, so that a saw has something to go by. A side has the name that its first " +
    "corner gives it with side:, or side.1, side.2 and so on in their order.",
};

export const trueEdgeBowed: FindingDef = {
  code: "true-edge-bowed",
  severity: "error",
  words: "the true edge {found} of offcut {name} is bowed",
  next: "name a side without a bulge, or leave the true edge out: then only the machine uses this offcut",
  explain: "A bowed side rocks at the fence, and the board is thrown back. Only a straight side is a true edge.",
};

export const nothingLeftOf: FindingDef = {
  code: "nothing-left-of-board",
  severity: "error",
  words: "nothing is left of {board} within its trim[ and beside its {zones}]",
  next: "check the sizes and places of {check}: they are measured from the lower left corner",
  explain:
    "Parts keep off the trim all round and off clamps, knots, pins and holes. Where these leave nothing, the offcut or " +
    "sheet is left out, or the machine where they cover its bed; everything else is used.",
};

export const offcutFindings: readonly FindingDef[] = [offcutSize, noSuchTrueEdge, trueEdgeBowed, nothingLeftOf];
