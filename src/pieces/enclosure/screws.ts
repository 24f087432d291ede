import { below, mm, type Outcome, raise, text } from "../../input/finding.js";
import type { Around } from "../../model/piece.js";
import { screwRow, splitScrew } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { screwName } from "../../shop/screwName.js";
import { noScrewLength } from "./findings.js";
import type { ScrewChoice } from "./joints.js";
import type { EnclosureSpec } from "./schema.js";

/** The screw that is used where the job names none, by the units that the job is written in. */
const usual = { mm: "4.0", cm: "4.0", in: "#8" } as const;

/**
 * The screw for the joints: as the job names it, with or without a length; without, the shortest on hand that is twice
 * the board long and bites deep enough into the edge. No value, and no finding, where the job wants no screws.
 */
export function screwChoiceOf(spec: EnclosureSpec, thickness: number, around: Around): Outcome<ScrewChoice> {
  if (spec.screws === "none") return { value: undefined, findings: [] };
  const wanted = spec.screws?.with ?? usual[around.job.units];
  const split = splitScrew(wanted);
  const rowName = split?.row ?? wanted;
  const row = screwRow(around.shop, rowName);
  const least = Math.max(2 * thickness, thickness + rules.edgeBite.value);
  const length = split?.length ?? row?.lengths.find((stock) => stock >= least);
  if (row !== undefined && length !== undefined && length >= least) {
    return { value: { row, name: `${screwName(rowName, length)} screw`, length }, findings: [] };
  }
  const at = spec.screws ? below(around.origin, "screws", "with") : below(around.origin, "board");
  const facts = { screw: text(wanted), thickness: mm(thickness), least: mm(least) };
  return { value: undefined, findings: [raise(noScrewLength, { at: [at], on: [around.id], facts })] };
}
