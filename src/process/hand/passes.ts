import { tolerance } from "../../geometry/tolerance.js";
import { rules } from "../../shop/rules.js";

/**
 * Depths below the face, pass by pass, that a hand router is set to for a bit of diameter `d`: passes as equal as the
 * router's step allows, none deeper than the trade has it; the last is the whole depth. mm.
 */
export function handPasses(d: number, depth: number, step: number): readonly number[] {
  const most = Math.min(rules.handPass.value, d * rules.handPassShare.value);
  const inSteps = (length: number, round: (x: number) => number) => round(length / step) * step;
  const count = Math.ceil(depth / Math.max(step, inSteps(most + tolerance.samePoint, Math.floor)) - 1e-9);
  const each = inSteps(depth / count - tolerance.samePoint, Math.ceil);
  const depths = Array.from({ length: count - 1 }, (_, i) => each * (i + 1)).filter((to) => to < depth);
  return [...depths, depth];
}
