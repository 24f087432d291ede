import { identity } from "../../src/geometry/frame.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { rectangle } from "../../src/geometry/shapes.js";
import type { PartProcess, Plan } from "../../src/model/build.js";
import { boardId, featureId, nameWithin, partId, pieceId } from "../../src/model/ids.js";
import type { Job } from "../../src/model/job.js";
import type { Cut, Feature, Part } from "../../src/model/part.js";
import type { Bit, Cnc, Method, Shop } from "../../src/model/shop.js";
import { processOf } from "../../src/process/process.js";
import { cnc } from "../../src/shop/machines.js";
import { sampleJob, sampleShop } from "../fixtures/jobAndShop.js";

// One part on the bench: a 400 x 300 panel of 18 mm board, and whatever a test does to it.

export const id = partId(pieceId("lid"), "panel");

export function feature(name: string, cut: Cut, more: Partial<Feature> = {}): Feature {
  return {
    id: featureId(id, name),
    from: [{ file: "job.yaml", path: [name] }],
    side: "face",
    stage: "sheet",
    cut,
    ...more,
  };
}

export function hole(d: number, depth: number | "through", below?: number): Cut {
  return { kind: "hole", at: { x: 40, y: 40 }, d, depth, ...(below !== undefined && { below }) };
}

export function opening(outer: Profile, corner: "sharp" | "bit" | "relief" = "bit"): Cut {
  return { kind: "opening", region: { outer, holes: [] }, corner };
}

/** A rectangle with rounded corners, named `by`, its lower left corner at (x, y). */
export function rounded(x: number, y: number, w: number, h: number, r: number, by: string): Profile {
  if (r === 0) return rectangle(x, y, x + w, y + h, by);
  const bulge = Math.tan(Math.PI / 8);
  const at = (px: number, py: number, b: number) => ({ x: px, y: py, bulge: b, by });
  return [
    at(x + r, y, 0),
    at(x + w - r, y, bulge),
    at(x + w, y + r, 0),
    at(x + w, y + h - r, bulge),
    at(x + w - r, y + h, 0),
    at(x + r, y + h, bulge),
    at(x, y + h - r, 0),
    at(x, y + r, bulge),
  ];
}

export const sheetOutline = rectangle(0, 0, 400, 300, ["front", "right", "back", "left"]);

/** The panel with these features, the openings cut into its profile. */
export function panel(features: readonly Feature[] = [], more: Partial<Part> = {}): Part {
  const outer = more.profile?.outer ?? sheetOutline;
  const holes = features.flatMap(({ cut }) => (cut.kind === "opening" ? [cut.region.outer] : []));
  const profile: Region = { outer, holes };
  return {
    id,
    number: "L1",
    piece: pieceId("lid"),
    role: "panel",
    from: [{ file: "job.yaml", path: ["pieces", "lid"] }],
    board: boardId("box"),
    thickness: 18,
    features: [feature("outline", { kind: "outline", region: { outer, holes: [] }, corner: "bit" }), ...features],
    blank: profile,
    edges: {},
    coverings: {},
    at: identity,
    ...more,
    profile,
  };
}

export const planOf = (parts: readonly Part[]): Plan => ({
  frames: [],
  sizes: [],
  withheld: [],
  built: { parts, joints: [], axes: [], mounts: [], air: [], steps: [], buys: [] },
});

export const bits: Readonly<Record<string, Bit>> = {
  "6 straight": { kind: "straight", d: 6, "cutting length": 25 },
  "8 straight": { kind: "straight", d: 8, "cutting length": 32 },
  "3 straight": { kind: "straight", d: 3, "cutting length": 12 },
  "5 drill": { kind: "drill", d: 5 },
  "6 round-over": { kind: "round-over", d: 12 },
  "45 chamfer": { kind: "chamfer", d: 25 },
};

export const bed: Cnc = { ...cnc, length: 2500, width: 1300, clearance: 2 };

const shopOf = (method: Method, shop: Partial<Shop>): Shop => ({
  ...sampleShop,
  bits,
  cnc: bed,
  ...shop,
  "cut by": method,
});

/** The tool for each feature by its name. */
export const toolsBy = ({ part, work }: PartProcess): Readonly<Record<string, string>> =>
  Object.fromEntries(
    work.flatMap(({ feature, by, tool }) => {
      const name = by === "saw" ? "saw" : tool;
      return name === undefined ? [] : [[nameWithin(part, feature), name] as const];
    }),
  );

/** How the panel is cut, by this method, with these bits and whatever else the shop differs in. */
export function cut(part: Part, method: Method, shop: Partial<Shop> = {}, job: Partial<Job> = {}) {
  const whole = { ...sampleJob({ unit: "mm" }), ...job };
  const { value, findings } = processOf(whole, shopOf(method, shop), planOf([part]));
  const made = value!.parts[0]!;
  return { ...made, tool: toolsBy(made), findings, codes: findings.map((finding) => finding.code) };
}

/** The whole process of the panel. */
export const processFor = (part: Part, method: Method, shop: Partial<Shop> = {}) =>
  processOf(sampleJob({ unit: "mm" }), shopOf(method, shop), planOf([part])).value!;

/** How several parts are cut. */
export const processAll = (parts: readonly Part[], method: Method) =>
  processOf(sampleJob({ unit: "mm" }), shopOf(method, {}), planOf(parts)).value!.parts;
