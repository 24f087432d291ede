import type { FindingDef } from "../../../input/finding.js";

export const dividerNames: FindingDef = {
  code: "divider-names",
  severity: "error",
  words: "the divider between {one} and {other} parts no chamber: {chambers}",
  next: "give it the name of one chamber there is and one new name",
  explain:
    "Dividers are set in one after the other. Each parts the chamber that has one of its two names; the first parts the whole box. What lies on its left, rear or lower side takes its first name, the rest the second.",
};

export const outsideChamber: FindingDef = {
  code: "outside-chamber",
  severity: "error",
  words: "the {what} at {at} does not stand inside {chamber}, which reaches from {from} to {to}",
  next: "set it between {least} and {most}",
  explain:
    "Its place is measured from the outside of the left, rear or lower side of the box to its nearer side, and the whole board must stand in the air.",
};

export const standsInCorner: FindingDef = {
  code: "stands-in-corner",
  severity: "error",
  words:
    "the {what} at {at} stands in a corner of {chamber}: it would need an edge with two bevels, or be in two pieces",
  next: "move it off the corner by a board's thickness, or let it cross the box another way",
  explain:
    "A board inside the box runs from one wall to one other. Where a wall turns within its thickness, or the profile comes back to it, no straight cut makes it fit.",
};

export const innerTooSteep: FindingDef = {
  code: "inner-too-steep",
  severity: "error",
  words:
    "{board} meets {wall} aslant: its edge would need the blade tilted by {tilt}, and blades tilt no further than {most}",
  next: "let it cross the box another way, or move it to where it meets another wall",
  explain: "A board inside the box is bevelled where the wall that it meets leans. Saws tilt to 45 degrees.",
};

export const braceWithoutWindow: FindingDef = {
  code: "brace-without-window",
  severity: "error",
  words:
    "the brace at {at} has no room for its windows: {across} x {up} with {border} of border and corners of {round}",
  next: "make the border narrower or the corners tighter, or ask for fewer windows",
  explain: "A brace lets the air through its windows. Without any it would part the box in two: that is a divider.",
};

export const braceShutsPort: FindingDef = {
  code: "brace-shuts-port",
  severity: "error",
  words: "the brace at {at} stands before the end of a slot port and shuts it",
  next: "move it to where the port still runs, or past its end",
  explain:
    "A brace goes from wall to wall, or to the port's panel where the port runs beside it. Across the port's open end it would close it.",
};

export const chamberNotNamed: FindingDef = {
  code: "chamber-not-named",
  severity: "error",
  words: "the {what} of {piece} names {found} chamber",
  next: "give it `{key}:` with one of {chambers}",
  explain: "A box with dividers has several chambers, so what stands in one of them says in which.",
};

export const noSuchChamber: FindingDef = {
  code: "no-such-chamber",
  severity: "error",
  words: "{piece} has no chamber called {found}",
  next: "use {chambers}",
  explain:
    "Chambers have the names that the dividers give them with `between`, else left and right, rear and front, or lower and upper. A box without dividers has one chamber and no name for it.",
};

export const netOfChambers: FindingDef = {
  code: "net-of-chambers",
  severity: "error",
  words: "{piece} has {chambers}, so one net volume does not say what each needs",
  next: "leave out `net` and give each chamber its own under `chambers`",
  explain:
    "Each driver needs the volume of its own chamber. The sizes that are free settle when every chamber has its own.",
};

export const freeNeedsChamberNet: FindingDef = {
  code: "free-needs-chamber-net",
  severity: "error",
  words: "{what} is free, but no net volume is wanted of {chamber}",
  next: "add it under `chambers`, or give a length",
  explain:
    "A free divider is moved until the chamber on its left, rear or lower side has its volume; a free outside size until the chambers together have theirs.",
};

export const slotWalls: FindingDef = {
  code: "slot-walls",
  severity: "error",
  words: "{port} cannot open through {face} and run along {beside}",
  next: "choose two walls of its chamber that stand next to each other and jut out, both of them among {walls}",
  explain:
    "A slot port has a wall of the box as one of its sides. It opens through one wall of the profile and runs along the next; round a corner that goes in it would run into the air.",
};

export const slotTooLong: FindingDef = {
  code: "slot-too-long",
  severity: "error",
  words: "{port} is {long} long, and the box lets it run {most} before it meets a wall",
  next: "make it {best} or shorter, let it turn the corner with `turns: true`, or make the box larger there",
  explain:
    "A port needs at least its own gap between its end and the next wall, or the air cannot get round it (common practice, no source).",
};

export const slotEndNear: FindingDef = {
  code: "slot-end-near",
  severity: "warning",
  words: "{port} ends {room} before the next wall, where its gap of {gap} is usual",
  next: "make it {best} or shorter, or let it turn the corner",
  explain:
    "A port needs at least its own gap between its end and the next wall, or the air cannot get round it (common practice, no source).",
};

export const slotTurnShort: FindingDef = {
  code: "slot-turn-short",
  severity: "error",
  words: "{port} is {long} long, which leaves no panel after its turn",
  next: "make it {least} or longer, or leave out `turns`",
  explain: "Round the corner there must be room for the gap, the first panel's edge and a strip that can be cut.",
};

export const slotTurnTight: FindingDef = {
  code: "slot-turn-tight",
  severity: "error",
  words: "{port} has no room to turn at the end of {beside}: its chamber must be {least} deep there",
  next: "make the gap narrower or the chamber deeper, or leave out `turns`",
  explain:
    "After the turn the second panel stands across the box, its gap before the next wall. Behind it at least 30 mm must be left to the wall that the port opens through (common practice, no source).",
};

export const slotTooWide: FindingDef = {
  code: "slot-too-wide",
  severity: "error",
  words:
    "{port} does not fit beside {beside}: its gap and its panel take {takes}, and a wall or a divider stands in that",
  next: "make the gap narrower, or the chamber larger there",
  explain: "A port and its panels must lie within the air of their chamber all the way from the mouth to the end.",
};

export const mouthUnderNeighbour: FindingDef = {
  code: "mouth-under-neighbour",
  severity: "error",
  words: "the mouth of {port} runs to the edge of {face}, which {over} covers",
  next: "name {face} before {over} in `laps`, so that the mouth is a hole in {face} and not a notch",
  explain:
    "A slot port shares the walls beside it, so its mouth begins flush with them. The panel it opens through must run over their edges, or nothing would hold it there and the corner would leak.",
};

export const chamberFindings: readonly FindingDef[] = [
  dividerNames,
  outsideChamber,
  standsInCorner,
  innerTooSteep,
  braceWithoutWindow,
  braceShutsPort,
  chamberNotNamed,
  noSuchChamber,
  netOfChambers,
  freeNeedsChamberNet,
  slotWalls,
  slotTooLong,
  slotEndNear,
  slotTurnShort,
  slotTurnTight,
  slotTooWide,
  mouthUnderNeighbour,
];
