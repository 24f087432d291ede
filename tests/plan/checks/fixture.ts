import { type Frame, frameFromAxes, identity, shifted } from "../../../src/geometry/frame.js";
import type { Profile } from "../../../src/geometry/profile.js";
import { circle, type EdgeNames, rectangle } from "../../../src/geometry/shapes.js";
import type { Origin } from "../../../src/input/finding.js";
import type { Plan } from "../../../src/model/build.js";
import { axisId, boardId, featureId, partId, pieceId } from "../../../src/model/ids.js";
import type { Driver, Job, Obstacle } from "../../../src/model/job.js";
import type { Axis } from "../../../src/model/joint.js";
import type { Cut, Edge, Feature, Part, Side } from "../../../src/model/part.js";
import type { Air, Built } from "../../../src/model/piece.js";
import type { Shop } from "../../../src/model/shop.js";
import { starterShop } from "../../../src/shop/starter.js";

// Small jobs and plans by hand: a box of six panels, a plate, an obstacle. No piece code is needed for them.

export type Scene = { readonly job: Job; readonly shop: Shop; readonly plan: Plan };

const from: readonly Origin[] = [{ file: "fixture.yaml", path: ["pieces"] }];

/** A driver with every figure of its sheet, all of them sound. */
export const tenInch: Driver = {
  "cut-out": 233,
  frame: 262,
  bolts: { circle: 248, holes: 8, screw: "4.0 x 25" },
  flange: 7,
  depth: 96,
  magnet: 150,
  "stands proud": 9,
  travel: 12,
};

export function jobWith(changes: Partial<Job> & { readonly space?: Job["space"] } = {}): Job {
  return {
    version: 1,
    file: "fixture.yaml",
    title: "Fixture",
    units: "mm",
    show: { unit: "mm" },
    boards: { box: { stock: "mdf-18" } },
    space: spaceWith(),
    drivers: {},
    coverings: { carpet: { stock: "box-carpet", thick: 3.5, clamped: 2 } },
    pieces: {},
    withheld: [],
    ...changes,
  };
}

/** A floor 2000 x 1500 under a roof 1000 high. */
export function spaceWith(changes: Partial<Job["space"]> = {}): Job["space"] {
  const sides: EdgeNames = ["rear", "right", "front", "left"];
  return {
    outline: rectangle(0, 0, 2000, 1500, sides),
    sides,
    height: 1000,
    obstacles: {},
    lines: {},
    "no screws": {},
    ...changes,
  };
}

export function obstacleAt(x0: number, y0: number, x1: number, y1: number, clear: number): Obstacle {
  const outline = rectangle(x0, y0, x1, y1, ["side.1", "side.2", "side.3", "side.4"]);
  return { outline, bottom: 0, top: 200, clear };
}

export type PartSketch = {
  readonly piece?: string;
  readonly role: string;
  readonly outer: Profile;
  readonly thickness?: number;
  readonly at?: Frame;
  readonly features?: readonly FeatureSketch[];
  readonly edges?: Part["edges"];
  readonly coverings?: Part["coverings"];
};

export type FeatureSketch = Partial<Pick<Feature, "axis" | "filledBy">> & {
  readonly name: string;
  readonly side?: Side;
  readonly cut: Cut;
};

export function sketchPart(sketch: PartSketch): Part {
  const piece = pieceId(sketch.piece ?? "box");
  const id = partId(piece, sketch.role);
  const features = (sketch.features ?? []).map(({ name, side, ...rest }): Feature => {
    return { id: featureId(id, name), from, side: side ?? "face", stage: "sheet", ...rest };
  });
  const profile = { outer: sketch.outer, holes: (sketch.features ?? []).flatMap(throughOf) };
  return {
    id,
    number: sketch.role,
    piece,
    role: sketch.role,
    from,
    board: boardId("box"),
    thickness: sketch.thickness ?? 18,
    features,
    profile,
    blank: profile,
    edges: sketch.edges ?? {},
    coverings: sketch.coverings ?? {},
    at: sketch.at ?? identity,
  };
}

function throughOf({ name, side = "face", cut }: FeatureSketch): Profile[] {
  if (typeof side !== "string") return [];
  if (cut.kind === "opening") return [cut.region.outer];
  return cut.kind === "hole" && cut.depth === "through" ? [circle(cut.at, cut.d / 2, name)] : [];
}

export function opening(name: string, x: number, y: number, d: number, filledBy?: string): FeatureSketch {
  const region = { outer: circle({ x, y }, d / 2, name), holes: [] };
  const cut = { kind: "opening", region, corner: "bit" } as const;
  return { name, cut, ...(filledBy === undefined ? {} : { filledBy }) };
}

type HoleExtra = { readonly axis?: string; readonly side?: Side; readonly below?: number; readonly filledBy?: string };

export function hole(
  name: string,
  x: number,
  y: number,
  d: number,
  depth: number | "through",
  { axis, side, below, filledBy }: HoleExtra = {},
): FeatureSketch {
  return {
    name,
    cut: { kind: "hole", at: { x, y }, d, depth, ...(below === undefined ? {} : { below }) },
    ...(side === undefined ? {} : { side }),
    ...(axis === undefined ? {} : { axis: axisId(pieceId("box"), axis) }),
    ...(filledBy === undefined ? {} : { filledBy }),
  };
}

/** An axis through parts; each place as [part, feature, role]. */
export function axisThrough(
  name: string,
  ray: Frame,
  fastener: string,
  stack: readonly (readonly [Part, string, Axis["stack"][number]["role"]])[],
): Axis {
  return {
    id: axisId(pieceId("box"), name),
    from,
    ray,
    fastener,
    stack: stack.map(([part, feature, role]) => ({ part: part.id, feature: featureId(part.id, feature), role })),
  };
}

export const wrapped = (wrap: number): Edge => ({
  bevel: 0,
  flush: 0,
  finish: { kind: "wrapped", covering: "carpet", loose: 3.5, clamped: 2, wrap },
});

export const edgeNames: EdgeNames = ["bottom", "right", "top", "left"];

export function planOf(parts: readonly Part[], built: Partial<Built> = {}, at: Frame = identity): Plan {
  return {
    frames: [...new Set(parts.map((part) => part.piece))].map((piece) => [piece, at] as const),
    sizes: [],
    built: { parts, joints: [], axes: [], mounts: [], air: [], steps: [], buys: [], ...built },
    withheld: [],
  };
}

export function scene(plan: Plan, job: Partial<Job> = {}, shop: Partial<Shop> = {}): Scene {
  return { plan, job: jobWith(job), shop: { ...starterShop(), ...shop } };
}

export const roles = ["top", "bottom", "left", "right", "front", "rear"] as const;
export type Role = (typeof roles)[number];

export type BoxSize = { readonly width: number; readonly depth: number; readonly height: number; readonly t: number };

/**
 * A box of six panels: top and bottom over all, front and rear between, sides between those. Faces look outwards.
 * `features` go into the panel of that role; `shorter` takes mm off the right-hand end of a panel.
 */
export function boxParts(
  { width: w, depth: d, height: h, t }: BoxSize,
  features: Partial<Record<Role, readonly FeatureSketch[]>> = {},
  shorter: Partial<Record<Role, number>> = {},
): readonly Part[] {
  const panel = (role: Role, length: number, height: number, at: Frame): Part =>
    sketchPart({
      role,
      thickness: t,
      outer: rectangle(0, 0, length - (shorter[role] ?? 0), height, edgeNames),
      at,
      features: features[role] ?? [],
    });
  return [
    panel("top", w, d, shifted(0, 0, h)),
    panel("bottom", w, d, frameFromAxes([w, 0, 0], [-1, 0, 0], [0, 1, 0])),
    panel("rear", w, h - 2 * t, frameFromAxes([0, 0, t], [1, 0, 0], [0, 0, 1])),
    panel("front", w, h - 2 * t, frameFromAxes([w, d, t], [-1, 0, 0], [0, 0, 1])),
    panel("left", d - 2 * t, h - 2 * t, frameFromAxes([0, d - t, t], [0, -1, 0], [0, 0, 1])),
    panel("right", d - 2 * t, h - 2 * t, frameFromAxes([w, t, t], [0, 1, 0], [0, 0, 1])),
  ];
}

export function grossLitres({ width, depth, height, t }: BoxSize): number {
  return ((width - 2 * t) * (depth - 2 * t) * (height - 2 * t)) / 1e6;
}

/** The air of such a box. */
export function airOf(size: BoxSize, parts: readonly Part[], changes: Partial<Air> = {}): Air {
  return {
    name: "box",
    terms: [{ what: "gross inside", litres: grossLitres(size), shaped: true }],
    from,
    inside: [size.width / 2, size.depth / 2, size.height / 2],
    walls: parts.map((part) => part.id),
    ...changes,
  };
}
