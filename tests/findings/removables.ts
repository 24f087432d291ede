import { empty, stepped } from "./chambers.js";
import { box } from "./changes.js";
import type { FormPair } from "./forms.js";

const bolted = { with: "M6 button", gasket: 3 };
const panels = (value: Readonly<Record<string, object>>) => box("panels", value);
const lid = panels({ top: { bolted } });

const slot = [
  box("laps", ["front", "top", "bottom", "rear", "left", "right"]),
  box("slot ports", [{ in: "front", beside: "left", gap: 30, long: 300 }]),
];
const divider = (across: string) => box("dividers", [{ across, at: "middle" }]);
const level = (at: number) => box("dividers", [{ across: "height", at }]);
const terminal = (up: number) => box("terminal", { in: "front", hole: 60, at: [350, up] });

/** Jobs that raise what panels that are bolted on can find, and just do not. */
export const removablePairs: Readonly<Record<string, FormPair>> = {
  "bolted-double": {
    at: "pieces.box.panels.top.double",
    raises: empty(panels({ top: { bolted, double: "box" } })),
    spares: empty(panels({ top: { bolted, board: "box" } })),
  },
  "bolted-corner": {
    at: "pieces.box.panels.top.bolted",
    raises: empty(lid, box("joints", { at: { "top + front": "mitre" } })),
    spares: empty(lid, box("joints", { form: "mitre", at: { "top + front": "butt" } })),
  },
  "bolted-goes-in": {
    at: "pieces.box.panels.bottom.bolted",
    raises: stepped(panels({ bottom: { bolted } })),
    spares: stepped(lid),
  },
  // the front runs over the top
  "bolted-faces-meet": {
    at: "pieces.box.panels.front.bolted",
    raises: empty(panels({ top: { bolted }, front: { bolted } })),
    spares: empty(panels({ top: { bolted }, bottom: { bolted } })),
  },
  // two boards of 18.2, two battens of 120, and 1 of opening: 277.4
  "no-room-for-battens": {
    at: "pieces.box.panels.top.bolted",
    raises: empty(panels({ top: { bolted: { ...bolted, wide: 120 } } }), box("outside.depth", 277.3)),
    spares: empty(panels({ top: { bolted: { ...bolted, wide: 120 } } }), box("outside.depth", 277.5)),
  },
  // the batten lies under 18.2 of panel and 3 of gasket, 18.2 thick: its underside at 260.6
  "board-in-way": {
    at: "pieces.box.terminal",
    raises: empty(lid, terminal(231)),
    spares: empty(lid, terminal(230.5)),
  },
  // two boards of battens reach 36.4 behind the lid's 18.2 and its gasket's 3; a divider of 18.2 stands below
  "batten-meets-board": {
    at: "pieces.box.panels.top.bolted",
    raises: empty(panels({ top: { bolted: { ...bolted, insert: "M6 x 15" } } }), level(224.3)),
    spares: empty(panels({ top: { bolted: { ...bolted, insert: "M6 x 15" } } }), level(224.1)),
  },
  // half of a frame of 262 and of a head of 10.5: 136.25; a row stands 18.2 + 15 in from the edge,
  // and one of its bolts at 365
  "bolt-under-frame": {
    at: "pieces.box.driver",
    raises: empty(lid, box("driver", { is: "ten", in: "top", at: [365, 169.4] })),
    spares: empty(lid, box("driver", { is: "ten", in: "top", at: [365, 169.5] })),
  },
  "divider-on-gasket": {
    at: "pieces.box.panels.top.bolted",
    raises: empty(lid, divider("width")),
    spares: empty(lid, divider("height")),
  },
  "port-on-bolted": {
    at: "pieces.box.panels.top.bolted",
    raises: empty(lid, ...slot),
    spares: empty(panels({ rear: { bolted } }), ...slot),
  },
};

const battens = (...along: readonly string[]) => box("battens", [{ along, wide: 20 }]);

const hatch = (more: object = {}) =>
  box("hatch", { in: "rear", size: "200 x 150", with: "M6 button", gasket: 2, ...more });

/** The same for a hatch, in the rear of 700 x 263.6 between top and bottom. */
export const hatchPairs: Readonly<Record<string, FormPair>> = {
  // half of 200, and 30 of overlap
  "hatch-off-face": {
    at: "pieces.box.hatch",
    raises: empty(hatch({ at: [129.9, 150] })),
    spares: empty(hatch({ at: [130.1, 150] })),
  },
  // the side behind is 18.2 thick: 18.2 + 13.5 + 15 + 100
  "hatch-over-joint": {
    at: "pieces.box.hatch",
    raises: empty(hatch({ at: [146.6, 150] })),
    spares: empty(hatch({ at: [146.8, 150] })),
  },
  // twice one and a half of 9
  "hatch-overlap-short": {
    at: "pieces.box.hatch.overlap",
    raises: empty(hatch({ overlap: 26.9 })),
    spares: empty(hatch({ overlap: 27 })),
  },
  // 100 + 30, and half of 60
  "hatch-meets": {
    at: "pieces.box.hatch",
    raises: empty(hatch(), box("terminal", { in: "rear", hole: 60, at: [350 + 159.5, 150] })),
    spares: empty(hatch(), box("terminal", { in: "rear", hole: 60, at: [350 + 160.1, 150] })),
  },
  "hatch-round-too-large": {
    at: "pieces.box.hatch.round",
    raises: empty(hatch({ round: 75.1 })),
    spares: empty(hatch({ round: 74.9 })),
  },
  // the batten ends 18.2 + 20 from the side; blocks reach 100 + 20 + 20 from the hatch's middle
  "block-in-way": {
    at: "pieces.box.hatch",
    raises: empty(hatch({ insert: "M6 x 15", at: [178.1, 150] }), battens("rear + left")),
    spares: empty(hatch({ insert: "M6 x 15", at: [178.3, 150] }), battens("rear + left")),
  },
  "hatch-stands-out": { at: "pieces.box.hatch", raises: empty(hatch()), spares: empty() },
};

/** The same for battens along inside corners. */
export const battenPairs: Readonly<Record<string, FormPair>> = {
  // the step's inside corner lies between the walls called bottom and rear
  "batten-goes-in": {
    at: "pieces.box.battens[0].along[0]",
    raises: stepped(battens("bottom + rear")),
    spares: stepped(battens("top + front")),
  },
  "batten-on-bolted": {
    at: "pieces.box.battens[0].along[0]",
    raises: empty(lid, battens("top + front")),
    spares: empty(lid, battens("bottom + front")),
  },
  // inside 40, two battens of 20 along rear and front leave nothing between for the third
  "batten-no-room": {
    at: "pieces.box.battens[0].along[2]",
    raises: empty(
      box("outside.depth", 76.4),
      box("battens", [{ along: ["bottom + rear", "bottom + front", "bottom + left"], wide: 20 }]),
    ),
    spares: empty(
      box("outside.depth", 78),
      box("battens", [{ along: ["bottom + rear", "bottom + front", "bottom + left"], wide: 20 }]),
    ),
  },
};
