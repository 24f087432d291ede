import { frameAlong, frameFromAxes, shifted, type Vector } from "../../../src/geometry/frame.js";
import { rectangle } from "../../../src/geometry/shapes.js";
import { pieceId } from "../../../src/model/ids.js";
import type { Channel, Tube } from "../../../src/model/piece.js";
import type { Pair } from "./codes.js";
import {
  axisThrough,
  type BoxSize,
  boxParts,
  opening,
  planOf,
  type Scene,
  scene,
  sketchPart,
  tenInch,
} from "./fixture.js";

const size: BoxSize = { width: 500, depth: 400, height: 300, t: 18 };

/** Something round that begins here and runs so far this way; a port has an end. */
function tube(origin: Vector, along: Vector, length: number, d: number, isPort = false): Tube {
  const last: Vector = [0, 1, 2].map((i) => origin[i]! + along[i]! * length) as [number, number, number];
  return {
    name: isPort ? "port 1" : "dowel 1",
    piece: pieceId("box"),
    from: [],
    stretches: [{ at: frameAlong(origin, along), length, d, dTo: d }],
    ...(isPort ? { end: { at: frameAlong(last, along), d, run: length + size.t, long: length + size.t } } : {}),
  };
}

const upright = (x: number) => tube([x, 200, 18], [0, 0, 1], 264, 20);
/** A port 90 wide from the inside of the rear, 364 before the inside of the front. */
const portOf = (length: number) => tube([250, 18, 150], [0, 1, 0], length, 90, true);
const holding = (...tubes: readonly Tube[]): Scene => scene(planOf(boxParts(size), { tubes }));

/** A dowel across the width, below the driver in the top: its magnet ends at 204, 6 of air lie behind it. */
function under(height: number): Scene {
  const parts = boxParts(size, { top: [opening("opening.driver", 250, 200, 233, "driver ten")] });
  const mount = { driver: "ten", piece: pieceId("box"), at: shifted(250, 200, 300), from: [] };
  const tubes = [tube([18, 200, height], [1, 0, 0], 464, 20)];
  return scene(planOf(parts, { mounts: [mount], tubes }), { drivers: { ten: tenInch } });
}

/** An upright dowel 20 thick before the end, 60 from the inside of the rear, of a channel along the left side. */
function beside(y: number): Scene {
  const channel: Channel = {
    name: "port 1",
    piece: pieceId("box"),
    from: [],
    at: shifted(0, 0, 282),
    region: { outer: rectangle(18, 60, 58, 382, "channel"), holes: [] },
    thickness: 264,
  };
  const tubes = [tube([38, y, 18], [0, 0, 1], 264, 20)];
  return scene(planOf(boxParts(size), { tubes, channels: [channel] }));
}

/** A screw of the driver in the top, 124 from its axis, comes out 15 behind it; a brace stands so far from the left. */
function screwed(x: number): Scene {
  const parts = boxParts(size, { top: [opening("opening.driver", 250, 200, 233, "driver ten")] });
  const at = frameFromAxes([x, 18, 18], [0, 1, 0], [0, 0, 1]);
  const brace = sketchPart({ piece: "box", role: "brace.1", outer: rectangle(0, 0, 364, 264, "edge"), at });
  const top = parts.find(({ role }) => role === "top")!;
  const mount = { driver: "ten", piece: pieceId("box"), at: shifted(250, 200, 300), from: [] };
  const axis = axisThrough("driver.1", shifted(374, 200, 307), "4.0 x 40 screw", [[top, "driver.1", "pilot"]]);
  return scene(planOf([...parts, brace], { mounts: [mount], axes: [axis] }), { drivers: { ten: tenInch } });
}

/** What runs into ports and dowels, and just does not; and so of drivers' screws. */
export const tubePairs: readonly Pair[] = [
  { code: "tube-hits-part", raises: () => holding(upright(27.9)), short: () => holding(upright(28)) },
  { code: "tube-hits-driver", raises: () => under(188.1), short: () => under(188) },
  {
    code: "tubes-meet",
    raises: () => holding(upright(100), upright(119.9)),
    short: () => holding(upright(100), upright(120)),
  },
  { code: "channel-entered", raises: () => beside(50.1), short: () => beside(50) },
  // 2 beside the middle of a screw of 4
  { code: "screw-meets-behind", raises: () => screwed(393.9), short: () => screwed(394) },
  { code: "port-too-long", raises: () => holding(portOf(364.1)), short: () => holding(portOf(364)) },
  { code: "port-end-near", raises: () => holding(portOf(274.1)), short: () => holding(portOf(274)) },
];
