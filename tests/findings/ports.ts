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
