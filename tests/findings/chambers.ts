import type { Change } from "../pieces/planned.js";
import { box, boxAlone } from "./changes.js";
import type { FormPair } from "./forms.js";

/** The starter's box, empty: 700 x 400 x 300 of 18.2 board, its front over all its neighbours. */
export const empty = (...more: readonly Change[]): readonly Change[] => [
  ...boxAlone,
  ...["driver", "terminal", "flush", "net"].map((key) => box(key, undefined)),
  box("stands", { x: 100, y: 30 }),
  box("laps", ["front", "top", "bottom", "rear", "left", "right"]),
  box("outside", { width: 700, depth: 400, height: 300 }),
  ...more,
];

/** Its sides step in at 200, 150 high. */
export const stepped = (...more: readonly Change[]) =>
  empty(
    box("laps", undefined),
    box("outside", {
      side: [
        [0, 150],
        [200, 150],
        [200, 0],
        [400, 0],
        [400, 300],
        [0, 300],
      ].map((at) => ({ at })),
      width: 700,
    }),
    ...more,
  );

/** Above 100 its front leans back by so much in the 200 to the top. */
const leaning = (by: number, ...more: readonly Change[]) =>
  empty(
    box("laps", undefined),
    box("outside", {
      side: [
        [0, 0],
        [700, 0],
        [700, 100],
        [700 - by, 300],
        [0, 300],
      ].map((corner) => ({ at: corner })),
      width: 500,
    }),
    ...more,
  );

const dividers = (...list: readonly object[]) => box("dividers", list);
const halves = dividers({ across: "width", at: "middle" });
const wants = (left: string, right?: string) =>
  box("chambers", { left: { net: left }, ...(right ? { right: { net: right } } : {}) });
const brace = (more: object = {}) => box("braces", [{ across: "width", at: 300, ...more }]);
const slot = (more: object = {}) => box("slot ports", [{ in: "front", beside: "left", gap: 30, long: 300, ...more }]);
const at = (place: number) => dividers({ across: "width", at: place });

/** Jobs that raise what chambers, braces and slot ports can find, and just do not. */
export const chamberPairs: Readonly<Record<string, FormPair>> = {
  "divider-names": {
    at: "pieces.box.dividers[1]",
    raises: empty(
      dividers({ across: "width", at: 300, between: ["a", "b"] }, { across: "width", at: 500, between: ["c", "d"] }),
    ),
    spares: empty(
      dividers({ across: "width", at: 300, between: ["a", "b"] }, { across: "width", at: 500, between: ["b", "d"] }),
    ),
  },
  // the air reaches from 18.2 to 681.8
  "outside-chamber": { at: "pieces.box.dividers[0]", raises: empty(at(18.2)), spares: empty(at(18.3)) },
  // the step's inside lies at 218.2, and the divider would stand from 210 to 228.2
  "stands-in-corner": {
    at: "pieces.box.dividers[0]",
    raises: stepped(dividers({ across: "depth", at: 210 })),
    spares: stepped(dividers({ across: "depth", at: 219 })),
  },
  // 200 x tan 50 = 238.4, and 200 x tan 40 = 167.8
  "inner-too-steep": {
    at: "pieces.box.dividers[0]",
    raises: leaning(238.4, dividers({ across: "height", at: 180 })),
    spares: leaning(167.8, dividers({ across: "height", at: 180 })),
  },
  // 263.6 inside: two borders of 50 leave 163.6, and corners of 81.8 just fit
  "brace-without-window": {
    at: "pieces.box.braces[0]",
    raises: empty(brace({ round: 81.9 })),
    spares: empty(brace({ round: 81.7 })),
  },
  // the port ends at 100 from the rear's outside and needs its gap of 30 before that
  "brace-shuts-port": {
    at: "pieces.box.braces[0]",
    raises: empty(slot(), box("braces", [{ across: "depth", at: 52 }])),
    spares: empty(slot(), box("braces", [{ across: "depth", at: 51.7 }])),
  },
  "chamber-not-named": {
    at: "pieces.box.braces[0]",
    raises: empty(halves, brace()),
    spares: empty(halves, brace({ in: "left" })),
  },
  "no-such-chamber": {
    at: "pieces.box.braces[0]",
    raises: empty(halves, brace({ in: "lef" })),
    spares: empty(halves, brace({ in: "left" })),
  },
  "net-of-chambers": {
    at: "pieces.box.net",
    raises: empty(halves, box("net", "40 L")),
    spares: empty(halves, wants("20 L", "20 L")),
  },
  "free-needs-chamber-net": {
    at: "pieces.box.dividers[0].at",
    raises: empty(dividers({ across: "width", at: "free" })),
    spares: empty(dividers({ across: "width", at: "free" }), wants("20 L")),
  },
  "slot-walls": {
    at: "pieces.box.slot ports[0]",
    raises: empty(slot({ beside: "rear" })),
    spares: empty(slot({ beside: "right" })),
  },
  // 400 deep with a rear of 18.2: 381.8
  "slot-too-long": {
    at: "pieces.box.slot ports[0]",
    raises: empty(slot({ long: 381.9 })),
    spares: empty(slot({ long: 351 })),
  },
  "slot-end-near": {
    at: "pieces.box.slot ports[0]",
    raises: empty(slot({ long: 351.9 })),
    spares: empty(slot({ long: 351.7 })),
  },
  // to the corner of the middles 366.8; on to the panel's own start 15 + 18.2, and 20 of panel
  "slot-turn-short": {
    at: "pieces.box.slot ports[0]",
    raises: empty(slot({ turns: true, long: 419.9 })),
    spares: empty(slot({ turns: true, long: 420.1 })),
  },
  // 30 of gap, 18.2 of panel and 30 behind it: 78.2 inside two boards of 18.2
  "slot-turn-tight": {
    at: "pieces.box.slot ports[0]",
    raises: empty(slot({ turns: true, long: 300 }), box("outside.depth", 114.5)),
    spares: empty(slot({ turns: true, long: 300 }), box("outside.depth", 114.7)),
  },
  // 81.8 of air to the left of the divider, 18.2 of which is the port's panel
  "slot-too-wide": {
    at: "pieces.box.slot ports[0]",
    raises: empty(at(100), slot({ gap: 63.7, chamber: "left" })),
    spares: empty(at(100), slot({ gap: 63.5, chamber: "left" })),
  },
  "mouth-under-neighbour": {
    at: "pieces.box.slot ports[0].in",
    raises: empty(slot(), box("laps", undefined)),
    spares: empty(slot()),
  },
};
