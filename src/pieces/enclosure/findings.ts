import type { FindingDef } from "../../input/finding.js";
import { battenFindings } from "./battens/findings.js";
import { chamberFindings } from "./chambers/findings.js";
import { roundFindings } from "./ports/roundFindings.js";
import { removableFindings } from "./removable/findings.js";
import { hatchFindings } from "./removable/hatch/findings.js";

export const oneFreeSize: FindingDef = {
  code: "one-free-size",
  severity: "error",
  words: "{found} of the outside sizes are `free` or `largest`",
  next: "give all but one as a length; the last may be one of them",
  explain:
    "The wanted net volume, or the space, settles one size. With two there are endless answers; choose the one that the space cares about least.",
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
  next: "list all faces once, in one order; of two neighbours the first runs over the other's edge",
  explain:
    "One order of the faces says for all edges of the box who covers whose edge, so that every corner is filled once.",
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

export const blockInWay: FindingDef = {
  code: "block-in-way",
  severity: "error",
  words: "the block behind {face} for {axes} has no room: {other} is there",
  next: "move what is bolted there, or make {face} double, so that its inserts need no block",
  explain:
    "Where the hole of a threaded insert would come out of its panel a block of the box's board is glued behind it, 40 mm wide or more. What stands against the panel there is in its way.",
};

export const noScrewLength: FindingDef = {
  code: "no-screw-length",
  severity: "error",
  words: "no {screw} screw on hand is long enough for {thickness} board",
  next: "add a length of at least {least} to that screw in the shop file, or choose another screw",
  explain:
    "A screw through one board into the edge of the next is at least twice the board long and bites at least 25 mm (common practice, no source).",
};

export const cutOutOffFace: FindingDef = {
  code: "cut-out-off-face",
  severity: "error",
  words: "the {what} leaves the inside of the {face} by {out}",
  next: "move it, make it smaller, or put it in another face",
  explain: "A cut-out of the box must open into its air: what lies behind a neighbouring panel cannot be used.",
};

export const cutOutWiderThanFace: FindingDef = {
  code: "cut-out-wider-than-face",
  severity: "error",
  words: "the {what} measures {across}, and the inside of the {face} only {room} that way",
  next: "make the box {more} larger there, take something smaller, or put it in another face",
  explain:
    "A cut-out of the box must open into its air, between the panels that stand behind the face. This one is wider than they are apart, so no place on the face will do.",
};

export const outsideIncomplete: FindingDef = {
  code: "outside-incomplete",
  severity: "error",
  words: "the outside of {piece} is described by {given}, and needs {needed}",
  next: "give width, depth and height; or `side` and a width; or `plan` and a height",
  explain:
    "A square box has three sizes. A box of any profile has the corners of that profile, seen from the side or from above, and one size more: how wide or how high it is.",
};

export const noSuchFace: FindingDef = {
  code: "no-such-face",
  severity: "error",
  words: "{piece} has no face called {found}",
  next: "use {faces}",
  explain:
    "A square box has top, bottom, front, rear, left and right. The walls of a profile have the names that its corners give them with `side`, else names by where they look; its ends are left and right, or top and bottom.",
};

export const faceNamedTwice: FindingDef = {
  code: "face-named-twice",
  severity: "error",
  words: "a wall of {piece} is called {found}, and so is one of its ends",
  next: "give that side another name",
  explain: "The ends of a box seen from the side are left and right, of one seen from above top and bottom.",
};

export const wallCurved: FindingDef = {
  code: "wall-curved",
  severity: "error",
  words: "{side} of the profile of {piece} is curved",
  next: "leave out `round` and `bulge`, or draw the curve as several straight walls",
  explain: "Every wall of a box is one flat board.",
};

export const wallSwallowed: FindingDef = {
  code: "wall-swallowed",
  severity: "error",
  words:
    "nothing is left of {face} of {piece} inside its neighbours[: it is {long} long outside, and their boards take {taken} of it]",
  next: "make the profile larger there, take a thinner board, or lean the walls beside it less",
  explain:
    "Each wall takes its board's thickness, at a corner that leans more than that. Where the boards meet before a wall has any inside, there is no such box.",
};

export const noInside: FindingDef = {
  code: "no-inside",
  severity: "error",
  words: "the boards of {piece} run into each other: there is no air between {faces}",
  next: "make the profile wider there, or take a thinner board",
  explain: "The inside is the profile less the boards. Here it crosses itself, so that two walls share one place.",
};

export const tiltTooSteep: FindingDef = {
  code: "tilt-too-steep",
  severity: "error",
  words: "{corner} needs the blade tilted by {tilt}, and blades tilt no further than {most}",
  next: "choose another joint there (a mitre halves a wide corner, a butt suits a narrow one), or open the corner",
  explain:
    "A butt tilts the blade by what the corner differs from a right angle, a mitre by half of what it differs from straight on. Saws tilt to 45 degrees.",
};

export const noSuchCorner: FindingDef = {
  code: "no-such-corner",
  severity: "error",
  words: "no two faces of {piece} meet at {found}",
  next: "name the two faces that meet there, such as `top + front`",
  explain: "A corner is named by its two faces with a plus sign between.",
};

export const letInNotSquare: FindingDef = {
  code: "let-in-not-square",
  severity: "error",
  words: "{corner} cannot be a {form}: it is not square, goes in, or lies beside a corner that does",
  next: "make it a butt or a mitre",
  explain: "A rebate or groove is routed square to the board, so that what is let in must stand square in it.",
};

export const grooveNotSetIn: FindingDef = {
  code: "groove-not-set-in",
  severity: "error",
  words: "{corner} is to be a groove, but {face} is not set in",
  next: "give {face} a `set in`, or make it a rebate",
  explain:
    "A groove lies away from the edge, so the panel that runs in it lies as far inside the outline. At the edge itself it is a rebate.",
};

export const letInTooDeep: FindingDef = {
  code: "let-in-too-deep",
  severity: "error",
  words: "a {form} of {deep} leaves too little of {face}",
  next: "make it {most} or less",
  explain: "At least 3 mm of board must stay under a rebate or groove (common practice, no source).",
};

export const setInCovers: FindingDef = {
  code: "set-in-covers",
  severity: "error",
  words: "{face} is set in, but runs over {other} or is mitred with it",
  next: "name {face} after {other} in laps, and make their corner a butt or a groove",
  explain: "A face that lies inside the outline stands between its neighbours, which run out past it.",
};

export const mitreGoesIn: FindingDef = {
  code: "mitre-goes-in",
  severity: "error",
  words: "{end} cannot be mitred: its corner between {faces} goes in",
  next: "let {end} cover its walls, or stand between them",
  explain: "A saw cannot cut a bevel into an inside corner of a panel.",
};

export const driversTouch: FindingDef = {
  code: "drivers-touch",
  severity: "error",
  words: "{driver} and {other} stand {apart} apart on {face}, where they need {least}",
  next: "move them {more} further apart, or onto different faces",
  explain: "Frames must clear each other, and at least 3 mm of board stays between two cut-outs.",
};

export const recessNeedsFrame: FindingDef = {
  code: "recess-needs-frame",
  severity: "error",
  words: "the recess for {driver} needs its {missing}",
  next: "add `{missing}` to the driver's data",
  explain: "A recess is as wide as the driver's frame, with room to go in, and as deep as its flange.",
};

export const recessTooDeepInPanel: FindingDef = {
  code: "panel-recess-too-deep",
  severity: "error",
  words: "the recess of {deep} leaves too little of {face}",
  next: "take a thicker board there, or leave the recess out: {most} is the most",
  explain: "At least 3 mm of board must stay under the frame for its screws (common practice, no source).",
};

export const roundOverOpensJoint: FindingDef = {
  code: "round-over-opens-joint",
  severity: "error",
  words: "a round-over of {radius} cuts through the joint at {corner}",
  next: "make it {most} or less",
  explain: "Beyond the thickness of the covering panel the bit cuts into the joint's line and opens it.",
};

export const roundOverMeetsScrew: FindingDef = {
  code: "round-over-meets-screw",
  severity: "error",
  words: "a round-over of {radius} meets the screw heads at {corner}",
  next: "make it {most} or less, or hold that joint with glue alone",
  explain: "A router bit that meets a screw breaks. The heads lie over the middle of the board they go into.",
};

export const enclosureFindings: readonly FindingDef[] = [
  oneFreeSize,
  freeNeedsNet,
  lapsTwice,
  lineUpNeedsDriver,
  boxTooSmall,
  boxNotHeld,
  threadOffFace,
  blockInWay,
  noScrewLength,
  cutOutOffFace,
  cutOutWiderThanFace,
  outsideIncomplete,
  noSuchFace,
  faceNamedTwice,
  wallCurved,
  wallSwallowed,
  noInside,
  tiltTooSteep,
  noSuchCorner,
  letInNotSquare,
  grooveNotSetIn,
  letInTooDeep,
  setInCovers,
  mitreGoesIn,
  driversTouch,
  recessNeedsFrame,
  recessTooDeepInPanel,
  roundOverOpensJoint,
  roundOverMeetsScrew,
  ...chamberFindings,
  ...removableFindings,
  ...hatchFindings,
  ...battenFindings,
  ...roundFindings,
];
