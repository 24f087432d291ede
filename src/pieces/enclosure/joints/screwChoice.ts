import { below, type Finding, mm, type Outcome, raise, text } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { screwRow, splitScrew } from "../../../shop/lookups.js";
import { rules } from "../../../shop/rules.js";
import { screwName } from "../../../shop/screwName.js";
import { noScrewLength } from "../findings.js";
import type { EnclosureSpec } from "../schema.js";
import type { ScrewChoice } from "./jointScrews.js";
import type { Screwed } from "./screwed.js";

/** The screw that is used where the job names none, by the units that the job is written in. */
const usual = { mm: "4.0", cm: "4.0", in: "#8" } as const;

/**
 * The screws of a box by what they pass before they bite and how thick the covering board is, mm; a finding for each
 * stack that no screw on hand is long enough for. None, and no finding, where the job wants no screws.
 */
export function screwChoicesOf(spec: EnclosureSpec, joints: readonly Screwed[], around: Around) {
  const made = new Map<string, Outcome<ScrewChoice>>();
  const keyOf = (passed: number, board: number) => `${passed} ${board}`;
  for (const { over, passed } of joints) {
    const key = keyOf(passed, over.panel.thickness);
    if (!made.has(key)) made.set(key, choiceOf(spec, passed, over.panel.thickness, around));
  }
  const findings: readonly Finding[] = [...made.values()].flatMap((outcome) => outcome.findings);
  return { choose: (passed: number, board: number) => made.get(keyOf(passed, board))?.value, findings };
}

/**
 * The screw as the job names it, with or without a length; without, the shortest on hand that is twice the board long and
 * bites deep enough into the edge.
 */
function choiceOf(spec: EnclosureSpec, passed: number, board: number, around: Around): Outcome<ScrewChoice> {
  if (spec.screws === "none") return { value: undefined, findings: [] };
  const wanted = spec.screws?.with ?? usual[around.job.units];
  const split = splitScrew(wanted);
  const rowName = split?.row ?? wanted;
  const row = screwRow(around.shop, rowName);
  const least = Math.max(rules.screwInBoards.value * board, passed + rules.edgeBite.value);
  const length = split?.length ?? row?.lengths.find((stock) => stock >= least);
  if (row !== undefined && length !== undefined && length >= least) {
    return { value: { row, name: `${screwName(rowName, length)} screw`, length }, findings: [] };
  }
  const at = spec.screws ? below(around.origin, "screws", "with") : below(around.origin, "board");
  const facts = { screw: text(wanted), thickness: mm(board), least: mm(least) };
  return { value: undefined, findings: [raise(noScrewLength, { at: [at], on: [around.id], facts })] };
}
