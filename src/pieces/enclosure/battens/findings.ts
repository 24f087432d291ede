import type { FindingDef } from "../../../input/finding.js";

export const battenGoesIn: FindingDef = {
  code: "batten-goes-in",
  severity: "error",
  words: "the corner {corner} of {piece} goes in, so nothing inside holds a batten",
  next: "leave it out, or name a corner that juts out",
  explain: "A batten lies in the inside of a corner that juts out. Round one that goes in there is only air.",
};

export const battenOnBolted: FindingDef = {
  code: "batten-on-bolted",
  severity: "error",
  words: "a face at {corner} of {piece} is bolted on and has its own battens",
  next: "leave that corner out",
  explain: "What is bolted on lies on battens all round already, and nothing may be glued to it.",
};

export const battenNoRoom: FindingDef = {
  code: "batten-no-room",
  severity: "error",
  words: "a batten {wide} wide has no room along {corner} of {piece}",
  next: "make it narrower or of a thinner board; a corner tighter than 45 degrees takes none",
  explain:
    "A batten is cut to lie against both faces of its corner, as long as the corner between what stands at its ends. Nothing is left of this one, or no blade tilts that far.",
};

export const battenFindings: readonly FindingDef[] = [battenGoesIn, battenOnBolted, battenNoRoom];
