import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Feature, Part } from "../../model/part.js";
import { rules } from "../../shop/rules.js";
import { coveringOn, coveringOnEdge } from "../solids.js";
import { nameOf } from "../standing.js";

export const chamferLost: FindingDef = {
  code: "chamfer-lost",
  severity: "warning",
  words: "the chamfer on {part}, {width} across its face, is lost under {covering} of covering",
  next: "make its face {least} or more, or leave it off",
  explain:
    "A covering rounds off what lies under it. A chamfer still reads as one when its face is at least three times as wide as the covering is thick.",
};

export const chamferReads: Check = {
  name: "chamfers under coverings",
  findings: [chamferLost],
  run(job, _shop, plan) {
    return plan.built.parts.flatMap((part) => part.features.flatMap((feature) => chamferOf(job, part, feature)));
  },
};

function chamferOf(job: Job, part: Part, { id, from, side, cut }: Feature): readonly Finding[] {
  if (cut.kind !== "edge" || cut.form !== "chamfer") return [];
  const sides = coveringOn(job, part);
  const over = side === "back" ? sides.back : sides.face;
  const covering = Math.max(over, ...cut.along.map((edge) => coveringOnEdge(part, edge)));
  const width = Math.hypot(cut.width, cut.depth);
  const least = rules.chamferOverCovering.value * covering;
  if (width >= least - 1e-9) return [];
  const facts = { part: text(nameOf(part)), width: mm(width), covering: mm(covering), least: mm(least) };
  return [raise(chamferLost, { at: from, on: [part.id, id], facts })];
}
