import type { Change } from "../pieces/planned.js";
import { box, boxAlone, ten } from "./changes.js";

/** Jobs that raise what the forms and joints of a box can find, and just do not. `at`: the place of the finding. */
export type FormPair = {
  readonly at: string;
  readonly raises: readonly Change[];
  readonly spares: readonly Change[];
};

type Corner = { readonly at: readonly [number, number]; readonly side?: string; readonly round?: number };

/** The starter's box, square and empty: 500 x 420 x 300 of 18.2 board. */
const bare: readonly Change[] = [
  ...boxAlone,
  ...["driver", "terminal", "flush", "net"].map((key) => box(key, undefined)),
  box("stands", { x: 200, y: 30 }),
  box("outside", { width: 500, depth: 420, height: 300 }),
];
const squareBox = (...more: readonly Change[]) => [...bare, ...more];

/** The same as a profile seen from the side, 400 wide. */
const profiled = (side: readonly Corner[], ...more: readonly Change[]) => [
  ...bare,
  box("outside", { side, width: 400 }),
  ...more,
];

const corners = (...places: readonly (readonly [number, number])[]): readonly Corner[] => places.map((at) => ({ at }));
const named = (side: string): readonly Corner[] => [
  { at: [0, 0], side: "bottom" },
  { at: [400, 0], side },
  { at: [400, 300], side: "top" },
  { at: [0, 300], side: "rear" },
];
/** A corner cut off by `c` both ways. */
const cutOff = (c: number) => corners([0, 0], [300, 0], [300, 300 - c], [300 - c, 300], [0, 300]);
/** Two humps, joined under a bay whose floor lies this high. */
const bay = (floor: number) =>
  corners([0, 0], [400, 0], [400, 200], [250, 200], [250, floor], [150, floor], [150, 200], [0, 200]);
const wedge = (height: number) => corners([0, 0], [400, 0], [0, height]);
/** Its front leans by `lean` in its height of 300. */
const leaning = (lean: number): readonly Corner[] => [
  { at: [0, 0], side: "bottom" },
  { at: [400, 0], side: "rake" },
  { at: [400 - lean, 300], side: "top" },
  { at: [0, 300], side: "rear" },
];
const stepped = corners([0, 150], [200, 150], [200, 0], [400, 0], [400, 300], [0, 300]);
const joints = (value: object) => box("joints", value);
const two = (apart: number) => [
  box("outside", { width: 700, depth: 420, height: 300 }),
  box(
    "drivers",
    [0, apart].map((x) => ({ is: "ten", in: "top", at: [200 + x, 210] })),
  ),
];
const sunk = [box("driver", { is: "ten", in: "top", recess: "frame" })];
const rounded = (radius: number, ...more: readonly Change[]) => squareBox(box("round over", { radius }), ...more);

export const formPairs: Readonly<Record<string, FormPair>> = {
  "outside-incomplete": {
    at: "pieces.box.outside",
    raises: squareBox(box("outside.height", undefined)),
    spares: squareBox(),
  },
  "no-such-face": {
    at: "pieces.box.terminal.in",
    raises: squareBox(box("terminal", { in: "lid", hole: 60 })),
    spares: squareBox(box("terminal", { in: "top", hole: 60 })),
  },
  "face-named-twice": {
    at: "pieces.box.outside.side",
    raises: profiled(named("left")),
    spares: profiled(named("lefts")),
  },
  "wall-curved": {
    at: "pieces.box.outside.side",
    raises: profiled([{ at: [0, 0] }, { at: [400, 0], round: 1 }, { at: [400, 300] }, { at: [0, 300] }]),
    spares: profiled([{ at: [0, 0] }, { at: [400, 0], round: 0 }, { at: [400, 300] }, { at: [0, 300] }]),
  },
  // the inside of the cut-off corner: c x root 2 - 2 x 18.2 x tan 22.5 = 0 at c = 10.66
  "wall-swallowed": { at: "pieces.box.outside.side", raises: profiled(cutOff(10.6)), spares: profiled(cutOff(10.7)) },
  // two boards of 18.2: 36.4
  "no-inside": { at: "pieces.box.outside.side", raises: profiled(bay(36.3)), spares: profiled(bay(36.5)) },
  // 45 degrees at 400
  "tilt-too-steep": { at: "pieces.box.outside", raises: profiled(wedge(399)), spares: profiled(wedge(400)) },
  "no-such-corner": {
    at: "pieces.box.joints.at.top + bottom",
    raises: squareBox(joints({ at: { "top + bottom": "mitre" } })),
    spares: squareBox(joints({ at: { "top + front": "mitre" } })),
  },
  // square within 0.0005 rad: 0.15 in 300
  "let-in-not-square": {
    at: "pieces.box.joints",
    raises: profiled(leaning(0.16), joints({ at: { "bottom + rake": "rebate" } })),
    spares: profiled(leaning(0.14), joints({ at: { "bottom + rake": "rebate" } })),
  },
  "groove-not-set-in": {
    at: "pieces.box.joints",
    raises: squareBox(joints({ at: { "top + front": "groove" } })),
    spares: squareBox(joints({ at: { "top + front": "groove" } }), box("panels", { front: { "set in": 10 } })),
  },
  // 18.2 less 3
  "let-in-too-deep": {
    at: "pieces.box.joints",
    raises: squareBox(joints({ form: "rebate", deep: 15.3 })),
    spares: squareBox(joints({ form: "rebate", deep: 15.2 })),
  },
  "set-in-covers": {
    at: "pieces.box.outside",
    raises: squareBox(
      box("panels", { front: { "set in": 10 } }),
      box("laps", ["top", "bottom", "front", "rear", "left", "right"]),
    ),
    spares: squareBox(
      box("panels", { front: { "set in": 10 } }),
      box("laps", ["top", "bottom", "rear", "left", "right", "front"]),
    ),
  },
  "mitre-goes-in": {
    at: "pieces.box.joints",
    raises: profiled(stepped, joints({ form: "mitre" })),
    spares: profiled(corners([0, 0], [400, 0], [400, 300], [0, 300]), joints({ form: "mitre" })),
  },
  // two frames of 262
  "drivers-touch": {
    at: "pieces.box.drivers[0]",
    raises: squareBox(...two(261.9)),
    spares: squareBox(...two(262.1)),
  },
  "recess-needs-frame": {
    at: "pieces.box.driver.recess",
    raises: squareBox(...sunk, ten("frame", undefined)),
    spares: squareBox(...sunk),
  },
  "panel-recess-too-deep": {
    at: "pieces.box.driver.recess",
    raises: squareBox(...sunk, ten("flange", 15.3)),
    spares: squareBox(...sunk, ten("flange", 15.2)),
  },
  "round-over-opens-joint": {
    at: "pieces.box.round over.radius",
    raises: rounded(18.3, box("screws", "none")),
    spares: rounded(18.2, box("screws", "none")),
  },
  // half the board, 9.1, less half the head of a 4.0 screw, 4
  "round-over-meets-screw": {
    at: "pieces.box.round over.radius",
    raises: rounded(5.2),
    spares: rounded(5.1),
  },
};
