import type { Finding, Outcome } from "../input/finding.js";
import { withShop } from "../job/coverings.js";
import { programOf } from "../machining/program.js";
import type { AcceptedLayout } from "../model/accepted.js";
import type { Build, Layout, Plan, Process } from "../model/build.js";
import { hashOf } from "../model/hash.js";
import type { Job } from "../model/job.js";
import type { PieceKind } from "../model/piece.js";
import type { Program } from "../model/program.js";
import type { Shop } from "../model/shop.js";
import type { NestResult } from "../nest/engine.js";
import { type NestTask, nesting, nestParts } from "../nest/nest.js";
import { runChecks } from "../plan/checks/checks.js";
import { planJob } from "../plan/plan.js";
import { sheetsMeasured } from "../process/measured.js";
import { numbered } from "../process/numbers.js";
import { processOf } from "../process/process.js";
import { gatherFindings } from "./gather.js";
import { withhold, withholdSheets } from "./withhold.js";

export type Stage = "plan" | "checks" | "process" | "nest" | "program" | "done";

export type BuildOptions = {
  /** For the nest's search; the same seed gives the same layout on every machine. */
  readonly seed: number;
  /** Layouts the nest tries. Counted, never timed, so that a slow machine gets the same result. */
  readonly iterations: number;
  /** A layout that was accepted: what of it still holds is not searched again. */
  readonly accepted?: AcceptedLayout | undefined;
  /** Searches for a layout in another way than by counting iterations in this thread. */
  readonly search?: ((task: NestTask) => Promise<NestResult>) | undefined;
  /** What was found while the files were read; it comes first in the build's findings. */
  readonly found?: readonly Finding[];
  /** Called as each stage begins. */
  readonly onStage?: (stage: Stage) => void;
};

export const usualOptions = { seed: 1, iterations: 150 } as const;

/**
 * From a job and a shop to everything the writers need: plan, checks, process, nest, program. Parts that errors speak of are
 * left out and told. The same job, shop and options give the same build on every machine.
 *
 * Returns: no value only where nothing at all could be planned; the findings say why.
 */
export async function buildJob(
  asRead: Job,
  shop: Shop,
  kinds: readonly PieceKind[],
  options: BuildOptions,
): Promise<Outcome<Build>> {
  const begin = options.onStage ?? (() => {});
  const findings: Finding[] = [...(options.found ?? [])];
  const noted = <T>(outcome: Outcome<T>): T | undefined => {
    findings.push(...outcome.findings);
    return outcome.value;
  };

  begin("plan");
  const job = noted(withShop(asRead, shop)) ?? asRead;
  const planned = noted(planJob(job, shop, kinds));
  if (planned === undefined) return { value: undefined, findings: gatherFindings(findings) };
  begin("checks");
  findings.push(...(await runChecks(job, shop, planned)));
  begin("process");
  const safe = numbered(job, shop, noted(withhold(planned, findings, "whole piece"))!);
  const outcome = processOf(job, shop, safe);
  const process = noted(outcome);
  if (process === undefined) return { value: undefined, findings: gatherFindings(findings) };
  // What the process found may hold back more.
  const plan = noted(withhold(safe, outcome.findings, "part"))!;
  begin("nest");
  const layout = noted(await layOut(job, shop, plan, process, options));
  if (layout === undefined) return { value: undefined, findings: gatherFindings(findings) };
  const measuredOff = sheetsMeasured(job, plan, layout);
  findings.push(...measuredOff);
  begin("program");
  const program = withholdSheets(noted(programOf(job, shop, plan, process, layout))!, measuredOff);
  begin("done");
  const hash = hashOf(whatIsCut(shop, plan, process, layout, program));
  const told = gatherFindings(findings);
  return { value: { job, shop, hash, plan, process, layout, program, findings: told }, findings: told };
}

async function layOut(
  job: Job,
  shop: Shop,
  plan: Plan,
  process: Process,
  options: BuildOptions,
): Promise<Outcome<Layout>> {
  const { accepted, search } = options;
  if (search === undefined) return nestParts(job, shop, plan, process, options);
  const tasks = nesting(job, shop, plan, process, accepted);
  let step = tasks.next();
  while (!step.done) step = tasks.next(await search(step.value));
  return step.value;
}

/**
 * Everything that decides what is cut, and nothing that does not: neither where the files lie, nor how lengths are
 * shown, nor the words of the job, nor rows of the shop that this job does not use.
 */
function whatIsCut(shop: Shop, plan: Plan, process: Process, layout: Layout, program: Program): unknown {
  const { parts, joints, axes, mounts } = plan.built;
  const { saw, router, cnc } = shop;
  const used = new Set(process.parts.flatMap((part) => part.work.flatMap(({ tool }) => tool ?? [])));
  const bits = Object.fromEntries(Object.entries(shop.bits).filter(([name]) => used.has(name)));
  return plainFacts({
    frames: plan.frames,
    parts,
    joints,
    axes,
    mounts,
    process,
    layout,
    program,
    saw,
    router,
    cnc,
    bits,
  });
}

/** Where a value was written, and what it was taken from, cuts nothing. */
const sayNothing: readonly string[] = ["from", "source"];

function plainFacts(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainFacts);
  if (typeof value !== "object" || value === null) return value;
  const kept = Object.entries(value).filter(([key]) => !sayNothing.includes(key));
  return Object.fromEntries(kept.map(([key, inner]) => [key, plainFacts(inner)]));
}
