import type { FindingDef } from "../input/finding.js";

export const bitDoesNotGoIn: FindingDef = {
  code: "bit-does-not-go-in",
  severity: "error",
  words: "{bit} does not get everywhere in {feature} of {part}: it leaves up to {left} standing near x {x}, y {y}",
  next: "give the corner a larger radius, make the place wider, or add a thinner bit to the shop file; {feature} is not cut by the program",
  explain:
    "The path is laid out with the bit's measured diameter, so a bit that came out a little wider than its label may not go where a drawing lets it. A program that leaves something standing would look right on the screen and be found out on the bench.",
};

export const pathInDoubt: FindingDef = {
  code: "path-in-doubt",
  severity: "error",
  words: "the path of {bit} round {feature} of {part} could not be worked out with certainty near x {x}, y {y}",
  next: "move it by a millimetre, or change a radius, so that edges do not run exactly along each other; it is not cut by the program",
  explain:
    "Every path is found twice, by two different methods, and the areas are compared. Where they do not agree the feature is left out of the program: a wrong path costs a part.",
};

export const edgesTooShort: FindingDef = {
  code: "edges-too-short",
  severity: "error",
  words: "{bit} cuts {length} deep; {feature} of {part} takes {depth}",
  next: "choose a bit with longer edges, or write down its true cutting length in the shop file; {feature} is not cut by the program",
  explain:
    "Deeper than its edges are long a bit rubs with its shank, burns the board and may break. A cut that goes through runs on a little way into the spoilboard, reckoned from the thickest sheet measured.",
};

export const noTurningSpeed: FindingDef = {
  code: "no-turning-speed",
  severity: "error",
  words: "{bit} may turn at {limit} 1/min at most, but the spindle turns no slower than {least}",
  next: "use a smaller bit, or put the right speeds into the shop file; what it would cut is not in the program",
  explain:
    "The faster the rim of a bit runs, the nearer it comes to flying apart. The limit marked on the bit always wins; without one, wide bits are held to the usual speeds of the trade.",
};

export const chipTooThin: FindingDef = {
  code: "chip-too-thin",
  severity: "note",
  words:
    "{bit} takes chips of {chip} in {board} where {wanted} would be right: the machine goes no faster and the spindle no slower",
  next: "watch for burning; a bit with fewer flutes takes thicker chips",
  explain:
    "Feed is rpm times flutes times chip. Where the machine cannot go as fast as that asks, the rpm is lowered to keep the chip; where the spindle cannot turn as slowly, the chip gets thin and the bit rubs and burns.",
};

export const notAtTheMachine: FindingDef = {
  code: "not-at-the-machine",
  severity: "error",
  words: "{bit} cannot cut {feature} of {part} at the machine: {why}",
  next: "choose another bit for it, or have it done by hand; it is not cut by the program",
  explain:
    "A bit cuts at the machine what its own form and the way it moves allow: a straight bit walls and floors, a drill its own hole, a cone that ends in a point slopes of its own angle.",
};

export const sinkLeft: FindingDef = {
  code: "sink-left",
  severity: "warning",
  words: "no bit on hand sinks {feature} of {part} at the machine: it needs {needs}",
  next: "sink it by hand, or add such a bit to the shop file; the hole itself is drilled",
  explain:
    "A countersink takes a cone of the screw head's own angle that ends in a point; a counterbore takes a straight bit that goes into it.",
};

export const noRoomForTabs: FindingDef = {
  code: "no-room-for-tabs",
  severity: "note",
  words: "{part} has no room for tabs; the cut stops {skin} short of its bottom",
  next: "cut the skin with a knife and trim it flush by hand; keep the board held down all over",
  explain:
    "Tabs hold a part until the sheet is cut. None stands at a corner, on a tight arc, or on an edge that is glued to another part, where what is left of it would keep the joint open. A part that has too little edge besides keeps a thin skin all round instead.",
};

export const tabOverSheet: FindingDef = {
  code: "tab-over-sheet",
  severity: "error",
  words: "a tab in {board} would be {height} high, the sheet is {thickness} thick",
  next: "hold the sheet down by a skin (hold: skin, under cnc in the shop file), or cut it by knife",
  explain:
    "A tab as high as the sheet is no cut at all. Sheets this thin are cut to a skin, or with a knife; the setup is not in the program.",
};

export const travelTooShort: FindingDef = {
  code: "travel-too-short",
  severity: "error",
  words: "the spindle must move {needed} up and down over {sheet}, the machine's travel is {travel}",
  next: "lower the safe height in the shop file, or cut this board on another machine; the setup is not in the program",
  explain:
    "From safe height above the sheet down to the deepest cut: the way that z must go, with the bit clamped so that it just reaches.",
};

export const pathOffBed: FindingDef = {
  code: "path-off-bed",
  severity: "error",
  words: "cutting {sheet} takes {length} x {width}, the machine reaches {bed length} x {bed width}",
  next: "leave more of the sheet's edge unused (trim), or cut the sheet down first; the setup is not in the program",
  explain:
    "The bit's centre runs outside of a part by half the bit, and on and off the path by a little more: beside the sheet's edge, when a part lies near to it. The sheet and all of the path must lie on the bed together.",
};

export const numberLeft: FindingDef = {
  code: "number-left",
  severity: "note",
  words: "there is no room on {part} for its mark {text}",
  next: "write it on by hand",
  explain: "Marks are engraved in plain strokes where nothing is cut away; on a narrow part there is no such place.",
};

export const thicknessChanged: FindingDef = {
  code: "thickness-changed",
  severity: "error",
  words: "{board} measures {measured}, but its parts were planned for {planned}",
  next: "plan again with the thickness measured; no program is made of this board",
  explain:
    "Joints, lengths and depths all follow from the thickness that was measured. A program made for one thickness must not be run on another: slots would be loose or tight, and cuts not go through.",
};

export const noCoupon: FindingDef = {
  code: "no-coupon",
  severity: "error",
  words: "{bit} makes no test piece",
  next: "use {allowed}",
  explain:
    "A test piece shows what a straight or compression bit really cuts: a slot as wide as the bit, a disc, and a hole. Drills and bits with a form of their own are measured as they are.",
};

/** What the making of the program can find. */
export const machiningFindings: readonly FindingDef[] = [
  bitDoesNotGoIn,
  pathInDoubt,
  edgesTooShort,
  noTurningSpeed,
  chipTooThin,
  notAtTheMachine,
  sinkLeft,
  noRoomForTabs,
  tabOverSheet,
  travelTooShort,
  pathOffBed,
  numberLeft,
  thicknessChanged,
  noCoupon,
];
