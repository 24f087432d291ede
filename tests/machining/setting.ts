import type { Region } from "../../src/geometry/profile.js";
import { programOf } from "../../src/machining/program.js";
import type { FeatureWork, Layout, PartProcess, Placed, Process } from "../../src/model/build.js";
import { boardId } from "../../src/model/ids.js";
import type { Job } from "../../src/model/job.js";
import type { Feature, Part } from "../../src/model/part.js";
import type { Setup } from "../../src/model/program.js";
import type { Cnc, Shop } from "../../src/model/shop.js";
import { starterShop } from "../../src/shop/starter.js";
import { sampleJob } from "../fixtures/jobAndShop.js";
import { panel, planOf } from "../process/benchParts.js";

// Parts laid on a sheet of 18 mm board by hand, each feature given to a bit: what the machine makes of it.

/** How a setting differs from the usual: the starter's machine and bits, a sheet of 2440 x 1220. */
export type Setting = {
  readonly cnc?: Partial<Cnc>;
  readonly bits?: Shop["bits"];
  readonly job?: Partial<Job>;
  readonly sheet?: { readonly length: number; readonly width: number };
  readonly placed?: (part: Part, index: number) => Partial<Placed>;
  readonly process?: Partial<Process>;
};

export type WorkOf = (feature: Feature, part: Part) => Pick<FeatureWork, "tool"> & Partial<FeatureWork>;

/** Everything by one bit. */
export const all =
  (tool: string): WorkOf =>
  () => ({ tool });

/** By the kind of cut; the rest by the first. */
export const byKind =
  (rest: string, tools: Readonly<Record<string, string>>): WorkOf =>
  ({ cut }) => ({ tool: tools[cut.kind] ?? rest });

export function programFor(parts: readonly Part[], work: WorkOf, setting: Setting = {}) {
  const starter = starterShop();
  const shop: Shop = {
    ...starter,
    bits: { ...starter.bits, ...setting.bits },
    cnc: { ...starter.cnc!, ...setting.cnc },
  };
  const boards = { box: { stock: "mdf-18", measured: 18 } };
  const job: Job = { ...sampleJob({ unit: "mm" }), boards, ...setting.job };
  const process: Process = {
    parts: parts.map((part) => processOf(part, work)),
    registration: [],
    hand: { profiles: [], jigs: [] },
    ...setting.process,
  };
  const sheet = { length: 2440, width: 1220, ...setting.sheet };
  const placed = parts.map(
    (part, i): Placed => ({
      part: part.id,
      x: 100 + 500 * (i % 4),
      y: 100 + 500 * Math.floor(i / 4),
      turn: 0,
      backUp: false,
      ...setting.placed?.(part, i),
    }),
  );
  const layout: Layout = {
    of: "",
    sheets: [{ sheet: "box 1", board: boardId("box"), ...sheet, trim: 5, placed }],
    left: [],
    bounds: [],
  };
  const plan = planOf(parts);
  const { value, findings } = programOf(job, shop, plan, process, layout);
  return { program: value!, findings, codes: findings.map(({ code }) => code), job, shop, plan, process, layout };
}

function processOf(part: Part, work: WorkOf): PartProcess {
  const works = part.features.map(
    (feature): FeatureWork => ({
      feature: feature.id,
      by: "cnc",
      setup: 1,
      why: "as the test says",
      ...work(feature, part),
    }),
  );
  const sides = works.some(({ setup }) => setup === 2) ? (["face", "back"] as const) : (["face"] as const);
  return { part: part.id, method: "cnc", why: "as the test says", sides, gap: 14, turns: [0], work: works };
}

/** The 400 x 300 panel with another outline. */
export const shaped = (region: Region, features: readonly Feature[] = []): Part => {
  const made = panel(features, { profile: region, blank: region });
  return {
    ...made,
    features: [{ ...made.features[0]!, cut: { kind: "outline", region, corner: "bit" } }, ...features],
  };
};

export const operationsOf = (setup: Setup) => setup.runs.flatMap(({ operations }) => operations);
