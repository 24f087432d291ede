import type { FindingDef } from "../../../../input/finding.js";

export const hatchOffFace: FindingDef = {
  code: "hatch-off-face",
  severity: "error",
  words: "the hatch's cover runs {out} over the edge of {face}",
  next: "move the hatch by that much, make it smaller, or let its cover overlap less",
  explain: "The cover of a hatch lies on the face all round, or its gasket has nothing to seal against.",
};

export const hatchOverJoint: FindingDef = {
  code: "hatch-over-joint",
  severity: "error",
  words: "the bolts of the hatch stand {out} over the edge of a board behind {face}",
  next: "move the hatch by that much, or make it smaller",
  explain:
    "The inserts of a hatch, with one and a half diameters of their holes round them, stand where the panel has air behind it: over a joint they would meet its screws and split the edge behind.",
};

export const hatchOverlapShort: FindingDef = {
  code: "hatch-overlap-short",
  severity: "error",
  words: "the hatch's cover overlaps its opening by {overlap}, and its inserts need {least}",
  next: "let it overlap by {least} or more, or use a smaller insert",
  explain:
    "An insert keeps one and a half diameters of its hole from the opening and stands in the middle of the overlap. Where the hole would come out of the panel a block of 40 mm is glued behind it, which must not hang into the opening.",
};

export const hatchMeets: FindingDef = {
  code: "hatch-meets",
  severity: "error",
  words: "the hatch's cover lies over {other} in {face}",
  next: "move one of them, make the hatch smaller, or put it in another face",
  explain: "Under the cover and its gasket must be plain board.",
};

export const hatchRoundTooLarge: FindingDef = {
  code: "hatch-round-too-large",
  severity: "error",
  words: "corners of {round} do not fit in an opening of {wide} x {high}",
  next: "make them {most} or less",
  explain: "Two corners share a side of the opening, so that each takes half of the shorter side at the most.",
};

export const hatchStandsOut: FindingDef = {
  code: "hatch-stands-out",
  severity: "note",
  words: "the hatch's cover stands {out} out of {face}",
  next: "count it where the box must fit: it is not in the outside size",
  explain:
    "The outside size is that of the box itself. Cover and gasket lie on its face; fit and loading opening count them.",
};

export const hatchFindings: readonly FindingDef[] = [
  hatchOffFace,
  hatchOverJoint,
  hatchOverlapShort,
  hatchMeets,
  hatchRoundTooLarge,
  hatchStandsOut,
];
