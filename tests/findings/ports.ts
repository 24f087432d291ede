import type { Change } from "../pieces/planned.js";
import { empty, stepped } from "./chambers.js";
import { box } from "./changes.js";
import type { FormPair } from "./forms.js";

/** Of tube 90 outside, in the middle of the front, which is 700 x 300. */
export const tube = (more: object = {}) => ({ in: "front", outside: 90, long: 200, ...more });
export const ports = (...list: readonly object[]): Change => box("round ports", list);
export const dowel = (across: string, at: readonly [number, number], thick = 20): Change =>
  box("dowels", [{ across, at, thick }]);
const beside = (apart: number) => ports(tube({ at: [300, 150] }), tube({ at: [300 + apart, 150] }));
const bent = (radius: number) => ports(tube({ elbow: { after: 50, radius, to: "up" } }));

/** Jobs that raise what the sizes and places of round ports and dowels can find, and just do not. */
export const portPairs: Readonly<Record<string, FormPair>> = {
  "port-tube-size": {
    at: "pieces.box.round ports[0]",
    raises: empty(ports(tube({ outside: undefined, inside: 84 }))),
    spares: empty(ports(tube({ outside: undefined, inside: 84, wall: 3 }))),
  },
  // half of 90
  "port-sizes": {
    at: "pieces.box.round ports[0].elbow.radius",
    raises: empty(bent(44.9)),
    spares: empty(bent(45)),
  },
  // the front is 300 high, and 263.6 inside
  "port-block-no-room": {
    at: "pieces.box.round ports[0].blocks.outer",
    raises: empty(ports(tube({ blocks: { outer: { across: 263.7 } } }))),
    spares: empty(ports(tube({ blocks: { outer: { across: 263.6 } } }))),
  },
  // 3 of board between two of 90
  "cut-outs-touch": {
    at: "pieces.box.round ports[0]",
    raises: empty(beside(92.9)),
    spares: empty(beside(93)),
  },
  // the air begins at 18.2
  "dowel-outside": {
    at: "pieces.box.dowels[0]",
    raises: empty(dowel("height", [28.1, 200])),
    spares: empty(dowel("height", [28.2, 200])),
  },
  // the inside of the step lies at 218.2
  "dowel-leans": {
    at: "pieces.box.dowels[0]",
    raises: stepped(dowel("height", [350, 228.1])),
    spares: stepped(dowel("height", [350, 228.2])),
  },
};

const slot = [
  box("laps", ["front", "top", "bottom", "rear", "left", "right"]),
  box("slot ports", [{ in: "front", beside: "left", gap: 30, long: 300 }]),
];
const beside470 = box("braces", [{ across: "width", at: 470 }]);
const boltsOf40: Change = [["drivers", "ten", "bolts", "screw"], "4.0 x 40"];
const turned = (by: string) => box("driver", { is: "ten", in: "top", turned: by });
const brace = box("braces", [{ across: "width", at: 300 }]);
/** The starter's driver in the middle of the top: its magnet ends 96 below, and 6 of air lie behind it. */
const under = (height: number) => empty(box("driver", { is: "ten", in: "top" }), dowel("width", [200, height]));
const bars = (apart: number) =>
  box("dowels", [
    { across: "height", at: [300, 200], thick: 20 },
    { across: "width", at: [200 + apart, 150], thick: 20 },
  ]);

/** And what stands in their way in the box. */
export const tubePairs: Readonly<Record<string, FormPair>> = {
  // 20 thick: it ends where the brace begins, in its border of 50
  "tube-hits-part": {
    at: "pieces.box.dowels[0]",
    raises: empty(brace, dowel("height", [290.1, 40])),
    spares: empty(brace, dowel("height", [290, 40])),
  },
  // 300 - 96 - 6 - 10
  "tube-hits-driver": { at: "pieces.box.dowels[0]", raises: under(188.1), spares: under(188) },
  // crossed, they share a grain of dust at first
  "tubes-meet": { at: "pieces.box.dowels[0]", raises: empty(bars(19.7)), spares: empty(bars(20)) },
  // 400 deep with a rear of 18.2: 381.8
  // the channel runs along the left to 300 before the outside of the front: its end lies 100 from the rear
  "channel-entered": {
    at: "pieces.box.dowels[0]",
    raises: empty(...slot, dowel("height", [33, 90.1])),
    spares: empty(...slot, dowel("height", [33, 90])),
  },
  // bolts on a circle of 248: a turn of half their pitch puts one 124 from the axis, into the brace
  "screw-meets-behind": {
    at: "pieces.box.driver",
    raises: empty(beside470, boltsOf40, turned("22.5deg")),
    spares: empty(beside470, boltsOf40, turned("0deg")),
  },
  "port-too-long": {
    at: "pieces.box.round ports[0]",
    raises: empty(ports(tube({ long: 381.9 }))),
    spares: empty(ports(tube({ long: 381.8 }))),
  },
  "port-end-near": {
    at: "pieces.box.round ports[0]",
    raises: empty(ports(tube({ long: 291.9 }))),
    spares: empty(ports(tube({ long: 291.8 }))),
  },
};
