import type { FindingDef } from "../../input/finding.js";
import { noBoltLength, noInsertForThread } from "../common/boltFindings.js";

export const plateVanishes: FindingDef = {
  code: "plate-vanishes",
  severity: "error",
  words: "with its gaps and covering taken off, the space leaves {pieces} pieces of plate",
  next: "make the gap smaller, use a thinner covering, or check the measured outline",
  explain:
    "The plate is the surveyed outline less the gap and the covering at each side. A narrow neck can close up, or all of it.",
};

export const noLevelTop: FindingDef = {
  code: "no-level-top",
  severity: "error",
  words: "{piece} offers no level top",
  next: "name a piece with a flat top, or give the height as a length",
  explain: "A plate lies on, and is bolted into, the top of another piece. That piece must stand level in the vehicle.",
};

export const plateOverNothing: FindingDef = {
  code: "plate-opens-over-nothing",
  severity: "error",
  words: "the plate opens over {piece}, which has no driver and is no ring",
  next: "name a box with a driver (`driver: NAME`) or a ring (`ring: NAME`)",
  explain: "`open over` cuts a round opening for a driver or for the ring around it.",
};

export const tooFewBoltPlaces: FindingDef = {
  code: "too-few-bolt-places",
  severity: "error",
  words: "only {found} of {wanted} bolts have room where plate and {piece} overlap, set in {setIn}",
  next: "ask for fewer bolts, or set them in less",
  explain:
    "Bolts stand on a line set in from the edge of the overlap, clear of the driver's opening by the room that a block behind the insert takes.",
};

export const grooveBroken: FindingDef = {
  code: "groove-broken",
  severity: "note",
  words: "the back groove of {part} stops short of {holes}",
  next: "cut the covering freehand across that gap, or move the bolts away from the wrap line",
  explain:
    "A groove that ran into a hole would weaken it and let the covering creep into the bolt. It is broken there.",
};

export const grooveShallow: FindingDef = {
  code: "groove-limited",
  severity: "note",
  words: "the back groove of {part} is {depth} deep where the covering wants {wanted}",
  next: "shave the covering's end thinner, or use a thicker board",
  explain: "A groove is never deeper than a third of the board, or the edge breaks off (common practice, no source).",
};

export const plateFindings: readonly FindingDef[] = [
  plateVanishes,
  noLevelTop,
  plateOverNothing,
  tooFewBoltPlaces,
  noBoltLength,
  noInsertForThread,
  grooveBroken,
  grooveShallow,
];
