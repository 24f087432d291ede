import type { FindingDef } from "../../../input/finding.js";
import { noBoltLength, noInsertForThread } from "../../common/boltFindings.js";

export const boltedDouble: FindingDef = {
  code: "bolted-double",
  severity: "error",
  words: "{face} is bolted on, and a second board behind it would lie where its battens are",
  next: "leave out `double` there, or give {face} a thicker board of its own",
  explain:
    "A panel that is bolted on lies on battens all round its inside. A board glued behind it would have to be cut out round them.",
};

export const boltedCorner: FindingDef = {
  code: "bolted-corner",
  severity: "error",
  words: "{face} is bolted on, so its corner with {other} cannot be a {form}",
  next: "leave that corner out of `joints`, or make it a butt",
  explain:
    "What comes off again lies flat on its gasket: over the edges of its neighbours, or between them on battens. It is not let into them, nor cut to an edge with them.",
};

export const boltedGoesIn: FindingDef = {
  code: "bolted-goes-in",
  severity: "error",
  words: "{face} is bolted on, but stands in a corner with {other} that goes in",
  next: "bolt another face on, or an end",
  explain: "In a corner that goes in a panel would have to come out through its neighbour.",
};

export const boltedFacesMeet: FindingDef = {
  code: "bolted-faces-meet",
  severity: "error",
  words: "{face} and {other} meet, and both are bolted on",
  next: "glue one of them",
  explain: "The battens of a panel that is bolted on are glued to its neighbours, which must stay.",
};

export const noRoomForBattens: FindingDef = {
  code: "no-room-for-battens",
  severity: "error",
  words: "{face} is too narrow for the battens it is bolted to: {wide} on each side leave nothing open of {air}",
  next: "make the battens narrower with `wide`, use a smaller insert, or make the box larger there",
  explain:
    "Inserts stand in battens under the panel, one and a half diameters of their holes from the battens' edges. Between them must be an opening.",
};

export const boardInWay: FindingDef = {
  code: "board-in-way",
  severity: "error",
  words: "the {what} in {face} opens against {board}",
  next: "move it by that board's width, make it smaller, or move the board",
  explain:
    "A batten or a brace is glued behind the panel there, so the hole does not open into the air, nor does what goes into it fit.",
};

export const battenMeetsBoard: FindingDef = {
  code: "batten-meets-board",
  severity: "error",
  words: "{batten} under {face} runs into {other}",
  next: "move {other}, make the batten narrower, or use an insert that stays in one board",
  explain:
    "A batten reaches as far into the box as its boards are thick. A divider, a brace or a leaning wall stands in its way there.",
};

export const boltUnderFrame: FindingDef = {
  code: "bolt-under-frame",
  severity: "error",
  words: "{bolts} of {face} lie under the frame of {driver}",
  next: "move the driver {missing} away from the edge, or make the panel larger",
  explain: "The heads of a panel's bolts need their place beside the driver's frame, and a key must reach them.",
};

export const dividerOnGasket: FindingDef = {
  code: "divider-on-gasket",
  severity: "note",
  words: "{divider} ends on the gasket of {face}, which is not glued to it",
  next: "lay the gasket over the divider's edge too; where no air may pass between the chambers, bolt another face on",
  explain:
    "A divider that meets a panel which is bolted on is sealed by the gasket alone, and no bolt stands over it: the panel's stiffness presses it.",
};

export const portOnBolted: FindingDef = {
  code: "port-on-bolted",
  severity: "error",
  words: "{port} shares {face}, which is bolted on: along its edge the port would leak by the gasket's thickness",
  next: "bolt another face on, or use a round port",
  explain: "A slot port is glued air-tight to the walls it shares. What comes off again cannot be one of them.",
};

export const removableFindings: readonly FindingDef[] = [
  boltedDouble,
  boltedCorner,
  boltedGoesIn,
  boltedFacesMeet,
  noRoomForBattens,
  boardInWay,
  battenMeetsBoard,
  boltUnderFrame,
  dividerOnGasket,
  portOnBolted,
  noBoltLength,
  noInsertForThread,
];
