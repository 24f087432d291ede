import { type Finding, mm, type Outcome, raise, text } from "../input/finding.js";
import type { Layout, Plan, Process, Registration } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { Program, Run, Setup } from "../model/program.js";
import type { Cnc, Shop } from "../model/shop.js";
import { rowOf } from "../shop/lookups.js";
import { rules } from "../shop/rules.js";
import type { Bench } from "./bench.js";
import { type Clamping, clampingsOf } from "./clampings.js";
import { chipTooThin, noTurningSpeed, thicknessChanged } from "./findings.js";
import { limitsOf } from "./limits.js";
import { numbersOf, runOf } from "./runs.js";
import { type Draft, draftOf, setupOf } from "./setup.js";
import { secondsOf } from "./time.js";
import { type Toolbox, toolboxOf } from "./toolbox.js";

/** A material that nobody named counts as what most sheets of this trade are. */
const usualMaterial = "MDF";

/**
 * What the machine does, sheet by sheet: paths with the bit's measured diameter, passes, tabs, order and time. Where a
 * feature cannot be cut as it should it is left out of its setup, where a whole setup cannot be run it is left out of the
 * program, with a finding each; the rest is there.
 *
 * Returns: no setups where the shop has no machine.
 */
export function programOf(job: Job, shop: Shop, plan: Plan, process: Process, layout: Layout): Outcome<Program> {
  const { cnc } = shop;
  if (cnc === undefined) return { value: { setups: [], withheld: [] }, findings: [] };
  const toolboxes = new Map<string, Toolbox>();
  const alone = clampingsOf(plan, process, layout).map((clamping): Attempt => {
    const material = materialOf(job, shop, clamping);
    if (!toolboxes.has(material)) toolboxes.set(material, toolboxOf(shop, cnc, material));
    const bench = benchFor(cnc, material, clamping);
    const changed = measuredOtherwise(job, shop, clamping);
    if (changed) return { clamping, bench, draft: undefined, findings: [changed] };
    const turns = process.parts.some(({ part, sides }) => sides.length === 2 && lies(clamping, part));
    const pins = turns ? process.registration.find(({ board }) => board === clamping.sheet.board) : undefined;
    const toolbox = toolboxes.get(material)!;
    const { draft, findings } = draftOf(bench, clamping, toolbox, pins);
    const limits = [...limitsOf(job, shop, cnc, bench, draft), ...slowPins(job, clamping, draft, toolbox, pins)];
    const runs = limits.length === 0 && !draft.unpinned;
    return { clamping, bench, draft: runs ? draft : undefined, findings: [...findings, ...limits] };
  });
  const made = bothOrNone(alone);
  const runnable = made.flatMap(({ draft, bench }) => (draft && draft.stints.length > 0 ? [{ draft, bench }] : []));
  const names = runnable.flatMap(({ draft }) => draft.stints.map(({ tool }) => tool.name));
  const numbers = numbersOf(names, cnc.tools);
  const setups = runnable.map(({ draft, bench }): Setup => {
    const runs: readonly Run[] = draft.stints.map((stint) => runOf(stint, numbers));
    return setupOf(draft, runs, bench, secondsOf(runs, cnc));
  });
  const withheld = made.filter(({ draft }) => draft === undefined).map(({ clamping }) => clamping.name);
  const thin = thinChips(
    job,
    runnable.map(({ draft }) => draft),
  );
  return { value: { setups, withheld }, findings: [...made.flatMap(({ findings }) => findings), ...thin] };
}

type Attempt = {
  readonly clamping: Clamping;
  readonly bench: Bench;
  readonly draft: Draft | undefined;
  readonly findings: readonly Finding[];
};

/** A sheet that is cut from both sides is of no use cut from one: where one of its setups cannot run, neither is written. */
function bothOrNone(attempts: readonly Attempt[]): readonly Attempt[] {
  const failed = new Set(attempts.flatMap(({ draft, clamping }) => (draft ? [] : [clamping.sheet.sheet])));
  return attempts.map((each) => (failed.has(each.clamping.sheet.sheet) ? { ...each, draft: undefined } : each));
}

/** The bit that would make the dowels' holes cannot turn in this machine. */
function slowPins(
  job: Job,
  { sheet }: Clamping,
  draft: Draft,
  { unable }: Toolbox,
  pins: Registration | undefined,
): readonly Finding[] {
  const slow = unable.get(pins?.tool ?? "");
  if (!draft.unpinned || slow === undefined) return [];
  const facts = { bit: text(pins!.tool!), limit: text(String(slow.limit)), least: text(String(slow.least)) };
  return [raise(noTurningSpeed, { at: [{ file: job.file, path: ["boards", sheet.board] }], facts })];
}

const lies = ({ lying }: Clamping, part: string): boolean => lying.some((each) => each.part.id === part);

function benchFor(cnc: Cnc, material: string, { lying }: Clamping): Bench {
  const thickness = Math.max(...lying.map(({ part }) => part.thickness));
  const through = -thickness - rules.intoSpoilboard.value;
  return { cnc, material, thickness, through, safe: cnc["safe height"], light: cnc["chip share"] < 1 };
}

function materialOf(job: Job, shop: Shop, { sheet }: Clamping): string {
  const stock = rowOf(job.boards, sheet.board)?.stock;
  return (stock === undefined ? undefined : rowOf(shop.boards, stock)?.material) ?? usualMaterial;
}

/** A board may have been measured anew since its parts were planned. */
function measuredOtherwise(job: Job, shop: Shop, { sheet, lying }: Clamping): Finding | undefined {
  const choice = rowOf(job.boards, sheet.board);
  const stock = choice && rowOf(shop.boards, choice.stock);
  const measured = choice?.measured ?? stock?.measured ?? stock?.thickness;
  const other = lying.find(({ part }) => measured !== undefined && Math.abs(part.thickness - measured) > sameThickness);
  if (measured === undefined || other === undefined) return undefined;
  const facts = { board: text(sheet.board), measured: mm(measured), planned: mm(other.part.thickness) };
  const at = [{ file: job.file, path: ["boards", sheet.board] }];
  return raise(thicknessChanged, { at, on: lying.map(({ part }) => part.id), facts });
}

const sameThickness = 1e-6; // mm: one number, carried through the plan

/** A chip thinner than this share of what is wanted is told. */
const thinShare = 0.9;

function thinChips(job: Job, drafts: readonly Draft[]): readonly Finding[] {
  const seen = new Set<string>();
  return drafts.flatMap(({ clamping: { sheet }, stints }) =>
    stints.flatMap(({ tool: { name, bit, speeds } }) => {
      const key = JSON.stringify([sheet.board, name]);
      const cuts = bit.kind !== "drill" && speeds.chip < thinShare * speeds.wanted;
      if (!cuts || seen.has(key)) return [];
      seen.add(key);
      const board = text(sheet.board);
      const facts = { bit: text(name), board, chip: mm(speeds.chip), wanted: mm(speeds.wanted) };
      return [raise(chipTooThin, { at: [{ file: job.file, path: ["boards", sheet.board] }], facts })];
    }),
  );
}
