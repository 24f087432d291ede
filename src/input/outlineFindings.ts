import type { FindingDef } from "./finding.js";

export const sameSide: FindingDef = {
  code: "same-side",
  severity: "error",
  words: "two sides of this outline are called {found}",
  next: "give each side its own name, or leave the names out",
  explain: "Pieces and findings speak of a side by its name, so each name stands for one side.",
};

export const cornersTogether: FindingDef = {
  code: "corners-together",
  severity: "error",
  words: "this corner lies on the one before it",
  next: "delete one of the two; the outline closes by itself, so the first corner is not repeated at the end",
  explain:
    "Two corners in one place leave a side without length. The last side runs back to the first corner by itself.",
};

export const outlineCrosses: FindingDef = {
  code: "outline-crosses",
  severity: "error",
  words: "the side that leaves this corner meets {other} at {x}, {y}",
  next: "check the order of the corners and their signs",
  explain:
    "An outline is walked round once, corner by corner, without crossing or touching itself. Where it does, two corners are most likely swapped, or a minus sign is missing.",
};

export const noArea: FindingDef = {
  code: "no-area",
  severity: "error",
  words: "this encloses nothing",
  next: "check the corners: they lie on one line",
  explain: "An outline, an obstacle or a zone needs a length and a width.",
};

export const noHeight: FindingDef = {
  code: "no-height",
  severity: "error",
  words: "this has no height: its top lies no higher than its bottom",
  next: "give two different heights, the lower one first",
  explain: "An obstacle reaches from one height to another above it.",
};

export const roundTooLarge: FindingDef = {
  code: "round-too-large",
  severity: "error",
  words: "a radius of {found} does not fit beside {side}",
  next: "write {most} or less, or move the corner",
  explain:
    "A rounding takes a length from both sides of its corner. Together with the rounding at the other end it may take no more than there is of a side.",
};

export const roundBesideBow: FindingDef = {
  code: "round-beside-bow",
  severity: "error",
  words: "a corner beside a bowed side cannot be rounded",
  next: "give the corner no round, or make the side straight here: split it with another corner",
  explain: "A rounding is laid between two straight sides. Beside a side with a bulge, measure the curve by corners.",
};

export const outlineFindings: readonly FindingDef[] = [
  sameSide,
  cornersTogether,
  outlineCrosses,
  noArea,
  noHeight,
  roundTooLarge,
  roundBesideBow,
];
