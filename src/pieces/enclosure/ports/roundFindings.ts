import type { FindingDef } from "../../../input/finding.js";

export const portTubeSize: FindingDef = {
  code: "port-tube-size",
  severity: "error",
  words: "how wide the tube of {port} is outside is not known: {given}",
  next: "give `outside`, or `inside` and `wall`; where all three stand they must agree",
  explain:
    "What a port takes of the air, and the hole that it goes through, are measured on the outside of its tube: the inside diameter and twice the wall.",
};

export const portSizes: FindingDef = {
  code: "port-sizes",
  severity: "error",
  words: "the {what} of {port} is {size}, and its other sizes ask for {least} at least",
  next: "make it {least} or more, or change what asks for it",
  explain:
    "A flare is as wide as its tube or wider, and so is the hole; a flange lies on board all round the hole; the middle of an elbow bends no tighter than half the tube. An elbow begins inside the wall and behind the outer flare, and the length holds wall, flares and elbow.",
};

export const cutOutsTouch: FindingDef = {
  code: "cut-outs-touch",
  severity: "error",
  words: "{port} comes within {apart} of {other} in the {face}, where {least} of board is the least",
  next: "move one of them away by {missing}, or make it smaller",
  explain:
    "Between the hole of a port, or its flange, and a driver's frame, a terminal or another port some board must stay, or it breaks out and neither can be sealed.",
};

export const dowelOutside: FindingDef = {
  code: "dowel-outside",
  severity: "error",
  words: "{dowel}, {thick} thick, does not stand in the air of {chamber} from wall to wall",
  next: "move it inwards by its own thickness or more, or name the chamber it stands in with `in`",
  explain:
    "Its place is measured from the outside of the left, rear or lower side to its middle, along the two sizes that it does not cross: width before depth before height. All of it must stand in the air of one chamber; where the profile comes back it would run out and in again.",
};

export const dowelLeans: FindingDef = {
  code: "dowel-leans",
  severity: "error",
  words: "{dowel} runs to a wall that leans, or steps within its {thick}",
  next: "let it cross another way, or move it to where both walls are square to it",
  explain: "A dowel is cut square. Between walls that lean it would touch with one edge only and stiffen nothing.",
};

export const portBlockNoRoom: FindingDef = {
  code: "port-block-no-room",
  severity: "error",
  words: "the {end} block of {port}, {across} across, has no room in {chamber}",
  next: "make it {best} across, or move the port",
  explain:
    "A block at the end of a port's tube stands in the air of its chamber, square to the tube, and its hole is in its middle. It must keep within the walls.",
};

export const roundFindings: readonly FindingDef[] = [
  portTubeSize,
  portSizes,
  portBlockNoRoom,
  cutOutsTouch,
  dowelOutside,
  dowelLeans,
];
