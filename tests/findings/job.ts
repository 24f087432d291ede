import type { Change } from "../pieces/planned.js";
import { pairUpTo, type Table } from "./road.js";

const read = pairUpTo("read");
const plan = pairUpTo("plan");
const corners = (...at: readonly (readonly [number, number, object?])[]): Change[] => [
  [["space", "outline"], at.map(([x, y, more]) => ({ at: [x, y], ...more }))],
  [["space", "opening"], undefined],
];
const battery = (to: readonly number[]): Change[] => [[["space", "obstacles", "auxiliary battery", "to"], to]];
const ten = (key: string, value: unknown): Change => [["drivers", "ten", ...key.split(".")], value];

const rack = (row: string) => `boards: {mdf-18: {offcuts: [{name: A, ${row}}]}}`;
const odd = (bulge: number) => `[{at: [0, 0], bulge: ${bulge}}, {at: [500, 0]}, {at: [0, 300]}]`;

/** What a job file and a shop file can be refused for beside what every typed file can. */
export const jobTable: Table = {
  "bad-name": read(
    "boards.a/b",
    [[["boards", "a/b"], { stock: "mdf-12" }]],
    [[["boards", "a-b"], { stock: "mdf-12" }]],
  ),
  "names-alike": read(
    "boards.Box",
    [[["boards", "Box"], { stock: "mdf-12" }]],
    [[["boards", "Boxy"], { stock: "mdf-12" }]],
  ),
  "unknown-kind": read("pieces.ring.kind", [[["pieces", "ring", "kind"], "rings"]], []),
  "no-pieces": read(
    "pieces",
    [[["pieces"], {}]],
    [[["pieces"], { lid: { kind: "panel", board: "box", outline: "60 x 30" } }]],
  ),
  "same-side": read(
    "space.outline[1].side",
    [[["space", "outline", 1, "side"], "rear"]],
    [[["space", "outline", 1, "side"], "rear right"]],
  ),
  "corners-together": read(
    "space.outline[0]",
    corners([0, 0], [1040, 0], [1040, 860], [0, 860], [0, 0]),
    corners([0, 0], [1040, 0], [1040, 860], [0, 860], [0, 0.1]),
  ),
  "outline-crosses": read(
    "space.outline[4]",
    corners([0, 0], [1040, 0], [520, 430], [1040, 860], [0, 860], [520, 430]),
    corners([0, 0], [1040, 0], [520.1, 430], [1040, 860], [0, 860], [519.9, 430]),
  ),
  "no-area": read("space.obstacles.auxiliary battery.to", battery([800, 740, 195]), battery([800.1, 740, 195])),
  "no-height": read("space.obstacles.auxiliary battery.to[2]", battery([1010, 740, 0]), battery([1010, 740, 0.1])),
  "round-too-large": read(
    "space.outline[2].round",
    corners([0, 0], [1040, 0], [1040, 860, { round: 860.1 }], [0, 860]),
    corners([0, 0], [1040, 0], [1040, 860, { round: 860 }], [0, 860]),
  ),
  "round-beside-bow": read(
    "space.outline[1].round",
    corners([0, 0, { bulge: 0.1 }], [1040, 0, { round: 60 }], [1040, 860], [0, 860]),
    corners([0, 0, { bulge: 0 }], [1040, 0, { round: 60 }], [1040, 860], [0, 860]),
  ),
  "unknown-side": read(
    "space.opening.side",
    [[["space", "opening", "side"], "rearr"]],
    [[["space", "opening", "side"], "rear"]],
  ),
  "cut-out-too-large": read("drivers.ten.cut-out", [ten("frame", 233)], [ten("frame", 233.1), ten("bolts", undefined)]),
  "bolt-circle-away": read("drivers.ten.bolts.circle", [ten("bolts.circle", 262)], [ten("bolts.circle", 261.9)]),
  "unknown-covering-stock": plan(
    "coverings.carpet.stock",
    [[["coverings", "carpet"], { stock: "bx-carpet" }]],
    [[["coverings", "carpet"], { stock: "bx-carpet", thick: 3.5 }]],
  ),
  "no-such-row": read("bits.11 drill", [], [], {
    raises: "bits: {11 drill: none}",
    spares: "bits: {11.5 drill: none}",
  }),
  "measured-far-off": read("bits.6 straight.measured", [], [], {
    raises: "bits: {6 straight: {measured: 5.49}}",
    spares: "bits: {6 straight: {measured: 5.5}}",
  }),
  "range-upside-down": read("cnc.rpm", [], [], {
    raises: "cnc: {rpm: {least: 18001, most: 18000}}",
    spares: "cnc: {rpm: {least: 18000, most: 18000}}",
  }),
  "bush-without-wall": read("bushes.17 bush", [], [], {
    raises: "bushes: {17 bush: {bore: 17}}",
    spares: "bushes: {17 bush: {bore: 16.9}}",
  }),
  "up-cut-too-long": read("bits.6 compression", [], [], {
    raises: "bits: {6 compression: {up-cut: 25.1}}",
    spares: "bits: {6 compression: {up-cut: 25}}",
  }),
  "tool-number-twice": read("cnc.tools.8 straight", [], [], {
    raises: "cnc: {tools: {6 straight: 2, 8 straight: 2}}",
    spares: "cnc: {tools: {6 straight: 2, 8 straight: 3}}",
  }),
  "tool-without-bit": read("cnc.tools.6 strait", [], [], {
    raises: "cnc: {tools: {6 strait: 1}}",
    spares: "cnc: {tools: {6 straight: 1}}",
  }),
  "offcut-size": read("boards.mdf-18.offcuts[0]", [], [], {
    raises: rack("length: 300"),
    spares: rack("length: 300, width: 200"),
  }),
  "no-such-true-edge": read("boards.mdf-18.offcuts[0].true edge", [], [], {
    raises: rack(`outline: ${odd(0)}, true edge: side.4`),
    spares: rack(`outline: ${odd(0)}, true edge: side.3`),
  }),
  "true-edge-bowed": read("boards.mdf-18.offcuts[0].true edge", [], [], {
    raises: rack(`outline: ${odd(0.01)}, true edge: side.1`),
    spares: rack(`outline: ${odd(0)}, true edge: side.1`),
  }),
  "nothing-left-of-board": read("boards.mdf-18.offcuts[0]", [], [], {
    raises: rack("length: 300, width: 200, clamps: [{at: [150, 100], size: 300 x 200}]"),
    spares: rack("length: 300, width: 200, clamps: [{at: [150, 100], size: 300 x 199.9}]"),
  }),
};
