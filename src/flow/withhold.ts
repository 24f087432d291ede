import { type Finding, type FindingDef, type Outcome, raise, text } from "../input/finding.js";
import type { Plan } from "../model/build.js";
import type { Axis } from "../model/joint.js";
import type { Part } from "../model/part.js";
import type { Built } from "../model/piece.js";
import type { Program } from "../model/program.js";

export const partsWithheld: FindingDef = {
  code: "parts-withheld",
  severity: "warning",
  words: "held back until the errors on them are put right: {found}",
  next: "put the errors right and run again; everything else is made",
  explain:
    "A part that an error speaks of would be cut from good board and then not fit or not hold. It is left out of the sheets, the drawings and the lists. A piece with a part that does not fit or hold is held back whole: what is left of it is of no use. A part that only cannot be cut with the tools at hand is held back alone.",
};

/**
 * Leaves out of a plan every part that an error speaks of: by itself, by a feature, an axis or its piece. Where one
 * reaches the whole piece, with everything of that piece.
 */
export function withhold(plan: Plan, findings: readonly Finding[], reach: "part" | "whole piece"): Outcome<Plan> {
  const named = new Set(findings.flatMap((finding) => (finding.severity === "error" ? finding.on : [])));
  const through = new Set(plan.built.axes.flatMap((axis) => (named.has(axis.id) ? partsOn(axis) : [])));
  const isHeld = (part: Part) =>
    named.has(part.id) ||
    named.has(part.piece) ||
    through.has(part.id) ||
    part.features.some((feature) => named.has(feature.id));
  const spoken = plan.built.parts.filter(isHeld);
  const pieces = new Set(reach === "whole piece" ? spoken.map((part) => part.piece) : []);
  const held = plan.built.parts.filter((part) => pieces.has(part.piece) || spoken.includes(part));
  if (held.length === 0) return { value: plan, findings: [] };
  const found = text((pieces.size > 0 ? [...pieces] : held.map((part) => part.id)).join(", "));
  const finding = raise(partsWithheld, { on: held.map((part) => part.id), facts: { found } });
  return { value: { ...plan, built: without(plan.built, new Set(held.map((part) => part.id))) }, findings: [finding] };
}

/** Leaves out of a program the setups of every sheet that an error speaks of, and names them. */
export function withholdSheets(program: Program, findings: readonly Finding[]): Program {
  const named = new Set(findings.flatMap((finding) => (finding.severity === "error" ? finding.on : [])));
  const held = program.setups.filter(({ sheet }) => named.has(sheet));
  if (held.length === 0) return program;
  return {
    setups: program.setups.filter((setup) => !held.includes(setup)),
    withheld: [...(program.withheld ?? []), ...held.map(({ name }) => name)],
  };
}

/** The air stays: what a box holds is what one wants to read when something is wrong with it. */
function without(built: Built, held: ReadonlySet<string>): Built {
  const kept = <T extends { readonly parts: readonly string[] }>(each: T) => !each.parts.some((part) => held.has(part));
  return {
    ...built,
    parts: built.parts.filter((part) => !held.has(part.id)),
    joints: built.joints.filter((joint) => !held.has(joint.laps) && !held.has(joint.into)),
    axes: built.axes.filter((axis) => !partsOn(axis).some((part) => held.has(part))),
    steps: built.steps.filter(kept),
  };
}

const partsOn = (axis: Axis) => axis.stack.map((level) => level.part);
