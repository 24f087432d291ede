import { frameFromAxes, shifted } from "../../../src/geometry/frame.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { rectangle } from "../../../src/geometry/shapes.js";
import { pieceId } from "../../../src/model/ids.js";
import type { Driver, Job } from "../../../src/model/job.js";
import type { Part } from "../../../src/model/part.js";
import {
  airOf,
  axisThrough,
  type BoxSize,
  boxParts,
  edgeNames,
  type FeatureSketch,
  grossLitres,
  hole,
  jobWith,
  obstacleAt,
  opening,
  planOf,
  type Role,
  type Scene,
  scene,
  sketchPart,
  spaceWith,
  tenInch,
  wrapped,
} from "./fixture.js";
import { tubePairs } from "./tubes.js";

/** A scene that raises a code, and one that is just short of it. */
export type Pair = { readonly code: string; readonly raises: () => Scene; readonly short: () => Scene };

const size: BoxSize = { width: 500, depth: 400, height: 300, t: 18 };
const gross = grossLitres(size);

type Features = Partial<Record<Role, readonly FeatureSketch[]>>;

function box(
  features: Features = {},
  air: Parameters<typeof airOf>[2] = {},
  shorter: Partial<Record<Role, number>> = {},
) {
  const parts = boxParts(size, features, shorter);
  return planOf(parts, { air: [airOf(size, parts, air)] });
}

/** A sheet 400 x 300 x 18 on the floor of the space, its corner at (x, y), its face at height z. */
function board(x: number, y: number, z: number, changes: Partial<Parameters<typeof sketchPart>[0]> = {}): Part {
  const outer = rectangle(0, 0, 400, 300, edgeNames);
  return sketchPart({ piece: "plate", role: "plate", outer, at: shifted(x, y, z), ...changes });
}

/** Something small between here and 100 above the floor. */
const pump = (bottom: number) => ({ ...obstacleAt(200, 150, 260, 200, 0), bottom, top: 100 });

const boards = (x: number, y: number, z: number, space: Partial<Job["space"]> = {}) =>
  scene(planOf([board(x, y, z)]), { space: spaceWith(space) });

/** A driver in the top of the box, its axis in the middle, on a plane `lift` above the top. */
function driven(
  driver: Partial<Driver>,
  { parts = [], lift = 0, height = size.height }: { parts?: readonly Part[]; lift?: number; height?: number } = {},
): Scene {
  const tall = { ...size, height };
  const own = boxParts(tall, { top: [opening("opening.driver", 250, 200, driver["cut-out"] ?? 233, "driver ten")] });
  const mount = { driver: "ten", piece: pieceId("box"), at: shifted(250, 200, height + lift), from: [] };
  return scene(planOf([...own, ...parts], { mounts: [mount] }), { drivers: { ten: { ...tenInch, ...driver } } });
}

const without = (key: keyof Driver): Driver => {
  const { [key]: _, ...rest } = tenInch;
  return { "cut-out": 233, ...rest };
};

/** One screw through or into a board, its ray straight up from the board's face. */
function screwed(
  sketch: FeatureSketch,
  role: "clearance" | "thread" | "pilot",
  {
    x,
    y,
    fastener = "4.0 x 25 screw",
    extra = [],
    thickness = 18,
    outer = rectangle(0, 0, 400, 300, edgeNames),
  }: Screwed,
): Scene {
  const part = sketchPart({ role: "panel", outer, thickness, features: [sketch, ...extra], at: shifted(0, 0, 100) });
  const axis = axisThrough("screw", shifted(x, y, 100), fastener, [[part, sketch.name, role]]);
  return scene(planOf([part], { axes: [axis] }));
}

type Screwed = {
  readonly x: number;
  readonly y: number;
  readonly fastener?: string;
  readonly extra?: readonly FeatureSketch[];
  readonly thickness?: number;
  readonly outer?: Profile;
};

const pilotAt = (x: number, y: number, depth = 10, extra: readonly FeatureSketch[] = []) =>
  screwed(hole("pilot", x, y, 2.3, depth, { axis: "screw" }), "pilot", { x, y, fastener: "4.0 x 12 screw", extra });

/** A screw into the top edge of a board of this length, at x. */
const edgePilot = (length: number, x: number, thickness = 18) =>
  screwed(hole("pilot", x, 300, 2.3, 30, { axis: "screw", side: { edge: "top" }, below: thickness / 2 }), "pilot", {
    x,
    y: 300,
    thickness,
    outer: rectangle(0, 0, length, 300, edgeNames),
  });

/** A screw through a board, `inset` from its edge, into the end of one 18 thick that stands below it. */
function lapped(inset: number): Scene {
  const over = sketchPart({
    role: "top",
    outer: rectangle(0, 0, 400, 300, edgeNames),
    at: shifted(0, 0, 100),
    features: [hole("screw", inset, 150, 4.5, "through", { axis: "screw" })],
  });
  const into = sketchPart({
    role: "left",
    outer: rectangle(0, 0, 300, 82, edgeNames),
    at: frameFromAxes([0, 300, 0], [0, -1, 0], [0, 0, 1]),
    features: [hole("pilot", 150, 82, 2.3, 30, { axis: "screw", side: { edge: "top" }, below: inset })],
  });
  const axis = axisThrough("screw", shifted(inset, 150, 100), "4.0 x 45 screw", [
    [over, "screw", "clearance"],
    [into, "pilot", "pilot"],
  ]);
  return scene(planOf([over, into], { axes: [axis] }));
}

/** Two holes that come at right angles into one board, `apart` from middle to middle. */
function crossing(apart: number): Scene {
  const part = sketchPart({
    role: "left",
    outer: rectangle(0, 0, 300, 200, edgeNames),
    features: [
      hole("from top", 100, 200, 3, 40, { axis: "one", side: { edge: "top" }, below: 9 }),
      hole("from face", 100 + apart, 180, 3, 15, { axis: "two" }),
    ],
  });
  return scene(planOf([part]));
}

/** An insert in the top of a box; `depth` of its hole, and a block behind it or none. */
function inserted(depth: number | "through", block: boolean): Scene {
  const own = boxParts(size, { top: [hole("insert", 100, 100, 9, depth, { axis: "bolt" })] });
  const behind = sketchPart({
    role: "block.1",
    outer: rectangle(0, 0, 60, 60, edgeNames),
    at: shifted(70, 70, size.height - 18),
    features: [hole("insert", 30, 30, 9, 5, { axis: "bolt" })],
  });
  const stack = [[own[0]!, "insert", "thread"] as const, ...(block ? [[behind, "insert", "thread"] as const] : [])];
  const axis = axisThrough("bolt", shifted(100, 100, size.height), "M6 x 16 button black", stack);
  const parts = block ? [...own, behind] : own;
  return scene(planOf(parts, { axes: [axis], air: [airOf(size, own)] }));
}

/** A board on the floor held by a screw of this length at (100, 100), over a tank that begins at x = `tank`. */
function overTank(length: number, tank: number): Scene {
  const part = board(0, 0, 18, { features: [hole("screw", 100, 100, 4.5, "through", { axis: "screw" })] });
  const axis = axisThrough("screw", shifted(100, 100, 18), `4.0 x ${length} screw`, [[part, "screw", "clearance"]]);
  const zone = { outline: rectangle(tank, 0, tank + 300, 300, "side") };
  return scene(planOf([part], { axes: [axis] }), { space: spaceWith({ "no screws": { tank: zone } }) });
}

const groove = (inset: number, depth: number, length = 400): FeatureSketch => ({
  name: "groove",
  side: "back",
  cut: {
    kind: "groove",
    path: [
      { x: 0, y: inset, bulge: 0, by: "groove" },
      { x: length, y: inset, bulge: 0, by: "groove" },
    ],
    closed: false,
    width: 4,
    depth,
  },
});

const wrappedBoard = (features: readonly FeatureSketch[]) =>
  scene(planOf([board(0, 0, 18, { edges: { bottom: wrapped(40) }, features })]));

/** A board notched round an obstacle 8 away, its inside corner rounded by this much. */
function notched(radius: number): Scene {
  const quarter = Math.tan(Math.PI / 8);
  const by = "notch.post";
  const outer: Profile = [
    { x: 0, y: 0, bulge: 0, by: "bottom" },
    { x: 400, y: 0, bulge: 0, by: "right" },
    { x: 400, y: 200, bulge: 0, by },
    { x: 200 + radius, y: 200, bulge: -quarter, by },
    { x: 200, y: 200 + radius, bulge: 0, by },
    { x: 200, y: 300, bulge: 0, by: "top" },
    { x: 0, y: 300, bulge: 0, by: "left" },
  ];
  return scene(planOf([board(0, 0, 100, { outer })]), {
    space: spaceWith({ obstacles: { post: obstacleAt(208, 208, 380, 290, 8) } }),
  });
}

const chamfered = (width: number) => {
  const cut = { kind: "edge", form: "chamfer", along: ["bottom"], width, depth: width, angle: Math.PI / 4 } as const;
  return scene(planOf([board(0, 0, 18, { coverings: { face: "carpet" }, features: [{ name: "chamfer", cut }] })]));
};

/** A lid with a hole of this diameter over the driver, its underside `above` the box. */
const lid = (d: number, above: number) =>
  sketchPart({
    piece: "lid",
    role: "lid",
    thickness: 12,
    outer: rectangle(0, 0, 500, 400, edgeNames),
    at: shifted(0, 0, size.height + above + 12),
    features: [opening("opening", 250, 200, d, "driver ten")],
  });

/** A brace that stands beside the driver's axis, this far away: there, 40 down, the basket is 99.21 in radius. */
const brace = (away: number) =>
  sketchPart({
    role: "brace",
    outer: rectangle(0, 0, 300, 200, edgeNames),
    at: frameFromAxes([250 + away + 18, 50, 60], [0, 1, 0], [0, 0, 1]),
  });

export const pairs: readonly Pair[] = [
  ...tubePairs,
  {
    code: "volume-off",
    raises: () => scene(box({}, { wantedL: gross / 1.021 })),
    short: () => scene(box({}, { wantedL: gross / 1.019 })),
  },
  {
    code: "volume-outside-wants",
    raises: () => withAir(driven({ wants: { closed: [gross + 0.01, gross + 5] } })),
    short: () => withAir(driven({ wants: { closed: [gross - 0.01, gross + 5] } })),
  },
  {
    code: "volume-in-doubt",
    raises: () => scene(box({}, { terms: [{ what: "gross inside", litres: gross * (1 + 2e-6), shaped: true }] })),
    short: () => scene(box({}, { terms: [{ what: "gross inside", litres: gross * (1 + 5e-7), shaped: true }] })),
  },
  {
    code: "air-leaks",
    raises: () => scene(box({ front: [opening("opening.terminal", 250, 130, 60)] })),
    short: () => scene(box({ front: [opening("opening.terminal", 250, 130, 60, "terminal")] })),
  },
  {
    code: "joint-gapes",
    raises: () => scene(box({}, {}, { left: 0.5 })),
    short: () => scene(box({}, {}, { left: 0.00005 })),
  },
  {
    code: "side-missing",
    raises: () => scene(box({}, {}, { left: 4.1 })),
    short: () => scene(box({}, {}, { left: 3.9 })),
  },
  {
    code: "parts-overlap",
    raises: () => scene(planOf([board(0, 0, 100), board(399.98, 0, 100, { piece: "shelf" })])),
    short: () => scene(planOf([board(0, 0, 100), board(399.995, 0, 100, { piece: "shelf" })])),
  },
  { code: "outside-space", raises: () => boards(-0.02, 100, 18), short: () => boards(0, 100, 18) },
  { code: "above-space", raises: () => boards(100, 100, 1000.02), short: () => boards(100, 100, 1000) },
  { code: "below-floor", raises: () => boards(100, 100, 17.98), short: () => boards(100, 100, 18) },
  {
    code: "fouls-obstacle",
    raises: () => boards(100, 100, 100, { obstacles: { post: obstacleAt(499.98, 150, 600, 200, 0) } }),
    short: () => boards(100, 100, 100, { obstacles: { post: obstacleAt(500, 150, 600, 200, 0) } }),
  },
  {
    // the bottom is 18 thick
    code: "closed-round-obstacle",
    raises: () => scene(box(), { space: spaceWith({ obstacles: { pump: pump(18) } }) }),
    short: () => scene(box(), { space: spaceWith({ obstacles: { pump: pump(17) } }) }),
  },
  {
    code: "obstacle-too-near",
    raises: () => boards(100, 100, 100, { obstacles: { post: obstacleAt(511.98, 150, 600, 200, 12) } }),
    short: () => boards(100, 100, 100, { obstacles: { post: obstacleAt(512, 150, 600, 200, 12) } }),
  },
  {
    code: "driver-figures-missing",
    raises: () => ({ ...driven({}), job: jobWith({ drivers: { ten: without("travel") } }) }),
    short: () => driven({}),
  },
  { code: "cut-out-over-frame", raises: () => driven({ "cut-out": 262 }), short: () => driven({ "cut-out": 261.9 }) },
  { code: "magnet-over-cut-out", raises: () => driven({ magnet: 233.1 }), short: () => driven({ magnet: 233 }) },
  {
    code: "bolts-near-cut-out",
    raises: () => driven({ bolts: { circle: 233 + 2.3 + 5.9, holes: 8, screw: "4.0 x 25" } }),
    short: () => driven({ bolts: { circle: 233 + 2.3 + 6, holes: 8, screw: "4.0 x 25" } }),
  },
  {
    code: "bolts-near-rim",
    raises: () => driven({ bolts: { circle: 258, holes: 8, screw: "4.0 x 25" } }),
    short: () => driven({ bolts: { circle: 257.9, holes: 8, screw: "4.0 x 25" } }),
  },
  { code: "frame-off-face", raises: () => driven({ frame: 400.4 }), short: () => driven({ frame: 400 }) },
  {
    code: "frame-hits",
    raises: () => driven({}, { parts: [lid(261.9, 0)] }),
    short: () => driven({}, { parts: [lid(262, 0)] }),
  },
  {
    code: "basket-hits",
    raises: () => driven({}, { parts: [brace(98.6)] }),
    short: () => driven({}, { parts: [brace(98.8)] }),
  },
  {
    code: "magnet-hits",
    raises: () => driven({}, { height: 96 + 18 - 0.1 }),
    short: () => driven({}, { height: 96 + 18 + 0.1 }),
  },
  {
    code: "magnet-gap-short",
    raises: () => driven({}, { height: 96 + 18 + 5.9 }),
    short: () => driven({}, { height: 96 + 18 + 6 }),
  },
  {
    code: "travel-hits",
    raises: () => driven({}, { parts: [lid(200, 27.9)] }),
    short: () => driven({}, { parts: [lid(200, 28)] }),
  },
  {
    code: "will-not-go-in",
    raises: () => scene(box(), { space: spaceWith({ opening: { width: 399.9, height: 299.9 } }) }),
    short: () => scene(box(), { space: spaceWith({ opening: { width: 400, height: 300 } }) }),
  },
  { code: "face-thread-near-edge", raises: () => pilotAt(150, 11.9), short: () => pilotAt(150, 12) },
  { code: "face-thread-near-corner", raises: () => pilotAt(17.6, 17.6), short: () => pilotAt(17.7, 17.7) },
  { code: "edge-thread-near-corner", raises: () => edgePilot(300, 69.9), short: () => edgePilot(300, 70) },
  { code: "edge-too-thin", raises: () => edgePilot(300, 150, 14.9), short: () => edgePilot(300, 150, 15) },
  { code: "lap-near-edge", raises: () => lapped(8.9), short: () => lapped(9) },
  {
    code: "pilot-near-opening",
    raises: () => pilotAt(200 + 50 + 1.15 + 2.9, 150, 10, [opening("opening", 200, 150, 100, "terminal")]),
    short: () => pilotAt(200 + 50 + 1.15 + 3, 150, 10, [opening("opening", 200, 150, 100, "terminal")]),
  },
  {
    code: "insert-near-edge",
    raises: () => screwed(hole("insert", 150, 13.4, 9, 14, { axis: "screw" }), "thread", { x: 150, y: 13.4 }),
    short: () => screwed(hole("insert", 150, 13.5, 9, 14, { axis: "screw" }), "thread", { x: 150, y: 13.5 }),
  },
  {
    code: "insert-in-edge",
    raises: () =>
      screwed(hole("insert", 150, 300, 9, 14, { axis: "screw", side: { edge: "top" } }), "thread", { x: 150, y: 300 }),
    short: () => screwed(hole("insert", 150, 150, 9, 14, { axis: "screw" }), "thread", { x: 150, y: 150 }),
  },
  { code: "holes-meet", raises: () => crossing(2.9), short: () => crossing(3) },
  {
    code: "tip-near-face",
    raises: () =>
      screwed(hole("pilot", 150, 150, 2.3, 16, { axis: "screw" }), "pilot", { x: 150, y: 150, fastener: "4.0 x 15.1" }),
    short: () =>
      screwed(hole("pilot", 150, 150, 2.3, 16, { axis: "screw" }), "pilot", { x: 150, y: 150, fastener: "4.0 x 15" }),
  },
  { code: "insert-opens-into-air", raises: () => inserted("through", false), short: () => inserted("through", true) },
  { code: "screw-into-zone", raises: () => overTank(20, 90), short: () => overTank(20, 110) },
  {
    code: "wrap-without-groove",
    raises: () => wrappedBoard([groove(40, 2, 150)]),
    short: () => wrappedBoard([groove(40, 2, 250)]),
  },
  {
    code: "back-too-deep",
    raises: () => wrappedBoard([groove(40, 6.1)]),
    short: () => wrappedBoard([groove(40, 6)]),
  },
  { code: "notch-corner-tight", raises: () => notched(8.1), short: () => notched(8) },
  {
    code: "chamfer-lost",
    raises: () => chamfered(10.5 / Math.SQRT2 - 0.01),
    short: () => chamfered(10.5 / Math.SQRT2),
  },
];

/** A box with its driver, its volume wanted and reached. */
export const soundBox = (): Scene => withAir(driven({}), { wantedL: gross });

/** The same scene with the air of its box told. */
function withAir({ plan, ...rest }: Scene, air: Parameters<typeof airOf>[2] = {}): Scene {
  const own = plan.built.parts.filter((part) => part.piece === "box");
  return { ...rest, plan: { ...plan, built: { ...plan.built, air: [airOf(size, own, air)] } } };
}
