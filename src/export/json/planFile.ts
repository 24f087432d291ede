import type { Finding } from "../../input/finding.js";
import type { Buy } from "../../lists/buy.js";
import { buysOf } from "../../lists/buys.js";
import { cautionsFor, type ShownCaution } from "../../lists/cautions.js";
import { type CutRow, cutListOf } from "../../lists/cutList.js";
import { type PieceMass, pieceMasses } from "../../lists/mass.js";
import { type Price, priceOf } from "../../lists/price.js";
import { stepsInOrder, stepWords } from "../../lists/steps.js";
import type { Build, Layout, Plan, Process } from "../../model/build.js";
import type { PartId } from "../../model/ids.js";
import type { Built, Step } from "../../model/piece.js";
import { outputNames } from "../outputNames.js";
import { type ProgramSummary, summaryOf } from "./programSummary.js";

/**
 * plan.json: all of a build, for other programs. Lengths mm, angles rad, volumes L, masses kg, whatever the job shows;
 * profiles are closed chains, counter-clockwise, each vertex with the bulge of the edge that leaves it. `plan`,
 * `process`, `layout` and `program` hold nothing that depends on how lengths are shown; only `lists` has words.
 */
export type PlanFile = {
  /** Counts up when a reader of this file would have to change. */
  readonly version: 1;
  readonly hash: string;
  readonly job: {
    readonly title: string;
    readonly reference?: string;
    readonly customer?: string;
    readonly date?: string;
  };
  readonly plan: Omit<Plan, "built"> & Omit<Built, "steps" | "buys">;
  readonly process: Process;
  readonly layout: Layout;
  readonly program: ProgramSummary;
  readonly findings: readonly Finding[];
  /** Names of the files of each part and sheet, without folder and extension. */
  readonly files: {
    readonly parts: readonly { readonly part: PartId; readonly name: string }[];
    readonly sheets: readonly { readonly sheet: string; readonly name: string }[];
  };
  readonly lists: {
    readonly cutList: readonly CutRow[];
    readonly buys: readonly Buy[];
    readonly price: Price;
    readonly masses: readonly PieceMass[];
    readonly steps: readonly Pick<Step, "id" | "words" | "parts" | "cautions">[];
    readonly cautions: readonly ShownCaution[];
  };
};

export function planFileOf(build: Build): PlanFile {
  const { job, hash, plan, process, layout, program, findings } = build;
  const { built, ...rest } = plan;
  const { steps: _steps, buys: _buys, ...made } = built;
  return {
    version: 1,
    hash,
    job: {
      title: job.title,
      ...(job.reference === undefined ? {} : { reference: job.reference }),
      ...(job.customer === undefined ? {} : { customer: job.customer }),
      ...(job.date === undefined ? {} : { date: job.date }),
    },
    plan: { ...rest, ...made },
    process,
    layout,
    program: summaryOf(program),
    findings,
    files: filesOf(build),
    lists: listsOf(build),
  };
}

function filesOf(build: Build): PlanFile["files"] {
  const { parts, sheets } = outputNames(build);
  return {
    parts: [...parts].map(([part, name]) => ({ part, name })),
    sheets: build.layout.sheets.map(({ sheet }, i) => ({ sheet, name: sheets[i]! })),
  };
}

function listsOf(build: Build): PlanFile["lists"] {
  const buys = buysOf(build);
  return {
    cutList: cutListOf(build),
    buys,
    price: priceOf(buys, build.shop.currency),
    masses: pieceMasses(build),
    steps: stepsInOrder(build.plan.built.steps).map(({ id, parts, cautions, ...step }) => ({
      id,
      parts,
      cautions,
      words: stepWords({ id, parts, cautions, ...step }, build.job.show),
    })),
    cautions: cautionsFor(build),
  };
}
