import { below, type Finding, mm, raise, text } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { chamberFinding } from "../chambers/unfit.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import type { NoDowel } from "./dowels.js";
import { dowelLeans, dowelOutside } from "./roundFindings.js";

/** Why dowels cannot stand where the job has them. */
export function dowelFindings(
  unfit: readonly NoDowel[],
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Finding[] {
  return unfit.map(({ index, why }) => {
    const wanted = spec.dowels![index]!;
    const at = [below(around.origin, "dowels", index)];
    if (why === "chamber") return chamberFinding("dowel", "in", wanted.in, at, shape, around);
    const facts = { dowel: text(`dowel ${index + 1}`), thick: mm(wanted.thick), chamber: text(wanted.in ?? around.id) };
    return raise(why === "leans" ? dowelLeans : dowelOutside, { at, on: [around.id], facts });
  });
}
