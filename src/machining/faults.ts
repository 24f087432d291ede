import { type Finding, type FindingDef, mm, raise, text } from "../input/finding.js";
import { featureName } from "../model/ids.js";
import type { Feature, Part } from "../model/part.js";
import { nameOf } from "../plan/standing.js";
import type { Done, Lying, Tool } from "./bench.js";
import type { Centres } from "./centres.js";
import { bitDoesNotGoIn, edgesTooShort, notAtTheMachine, pathInDoubt } from "./findings.js";

/** A feature that is left out of the program, and why. */
export function withheld(feature: Feature, finding: Finding): Done {
  return { cuts: [], findings: [finding], withheld: [feature.id] };
}

/** The finding for centres that could not be worked out, or that leave something standing. */
export function faultOf(lying: Lying, feature: Feature, tool: Tool, { doubt, missed }: Centres): Finding {
  const at = doubt?.at ?? missed!.at;
  const facts = { x: mm(at.x), y: mm(at.y), ...(missed ? { left: mm(missed.left) } : {}) };
  return about(missed ? bitDoesNotGoIn : pathInDoubt, lying.part, feature, tool, facts);
}

/** The finding for a cut deeper than the bit's edges are long; undefined where they reach. */
export function tooShort(lying: Lying, feature: Feature, tool: Tool, depth: number): Finding | undefined {
  const length = tool.bit["cutting length"];
  if (length === undefined || length >= depth - 1e-6) return undefined;
  return about(edgesTooShort, lying.part, feature, tool, { length: mm(length), depth: mm(depth) });
}

export function cannot(lying: Lying, feature: Feature, tool: Tool, why: string): Done {
  return withheld(feature, about(notAtTheMachine, lying.part, feature, tool, { why: text(why) }));
}

function about(def: FindingDef, part: Part, feature: Feature, tool: Tool, facts: Finding["facts"]): Finding {
  const names = { bit: text(tool.name), feature: text(featureName(feature.id)), part: text(nameOf(part)) };
  return raise(def, { at: feature.from, on: [part.id, feature.id], facts: { ...names, ...facts } });
}
