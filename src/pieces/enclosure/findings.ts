import type { FindingDef } from "../../input/finding.js";

export const oneFreeSize: FindingDef = {
  code: "one-free-size",
  severity: "error",
  words: "{found} of the outside sizes are free",
  next: "give all but one as a length; the last may be free",
  explain:
    "A wanted net volume settles one size. With two free there are endless answers; choose the one that the space cares about least.",
};

export const freeNeedsNet: FindingDef = {
  code: "free-needs-net",
  severity: "error",
  words: "{size} is free, but no net volume is wanted",
  next: "add a line such as `net: 20 L`, or give {size} as a length",
  explain: "A free size is moved until the box has the net volume that is wanted, so the volume must be there.",
};

export const lapsTwice: FindingDef = {
  code: "laps-name-each-face-once",
  severity: "error",
  words: "laps does not name every face once; missing: {missing}",
  next: "list top, bottom, front, rear, left and right in one order; of two neighbours the first runs over the other's edge",
  explain:
    "One order of the six faces says for all twelve edges who covers whose edge, so that every corner is filled once.",
};

export const lineUpNeedsDriver: FindingDef = {
  code: "line-up-needs-driver",
  severity: "error",
  words: "the box is to line up its driver, but has none",
  next: "add a `driver` to the box, or place it with `x` and `y`",
  explain: "`line up: {driver: NAME}` moves the box until its driver's axis lies on the reference line NAME.",
};

export const boxTooSmall: FindingDef = {
  code: "box-too-small",
  severity: "error",
  words: "the {size} of {found} leaves {left} inside with {thickness} board",
  next: "make it {least} or more",
  explain:
    "The inside is the outside less two boards. It must leave room to work in: at least 30 mm (common practice, no source).",
};

export const boxNotHeld: FindingDef = {
  code: "box-not-held",
  severity: "warning",
  words: "nothing says how {piece} is fixed to the vehicle",
  next: "add `held by` to the box: how many straps, bolts or brackets, and what in the vehicle they hold to",
  explain:
    "A loose heavy box becomes a projectile in a crash. Every box says how it is held to the body structure, not to trim. Follow local codes and have licensed or qualified people do the work where the law asks for it.",
};

export const threadOffFace: FindingDef = {
  code: "thread-off-face",
  severity: "error",
  words: "{axis} would be set {out} outside the {face} of {piece}",
  next: "move the bolt inwards, or make the box larger",
  explain: "A threaded insert needs the face of a board under it. One that another piece asks for lies beside the box.",
};

export const noScrewLength: FindingDef = {
  code: "no-screw-length",
  severity: "error",
  words: "no {screw} screw on hand is long enough for {thickness} board",
  next: "add a length of at least {least} to that screw in the shop file, or choose another screw",
  explain:
    "A screw through one board into the edge of the next is at least twice the board long and bites at least 25 mm (common practice, no source).",
};

export const terminalOffFace: FindingDef = {
  code: "cut-out-off-face",
  severity: "error",
  words: "the {what} leaves the inside of the {face} by {out}",
  next: "move it, make it smaller, or put it in another face",
  explain: "A cut-out of the box must open into its air: what lies behind a neighbouring panel cannot be used.",
};

export const enclosureFindings: readonly FindingDef[] = [
  oneFreeSize,
  freeNeedsNet,
  lapsTwice,
  lineUpNeedsDriver,
  boxTooSmall,
  boxNotHeld,
  threadOffFace,
  noScrewLength,
  terminalOffFace,
];
