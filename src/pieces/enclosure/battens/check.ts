import { type Finding, mm, raise, text } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { noSuchCorner } from "../findings.js";
import { type CutOut, inTheWay } from "../removable/inTheWay.js";
import type { Battens, NoBatten } from "./battens.js";
import * as say from "./findings.js";

/** What is wrong with the battens in a box's corners. */
export function battenFindings(
  { stand, unfit }: Battens,
  cutOuts: readonly CutOut[],
  around: Around,
): readonly Finding[] {
  return [...unfit.map((each) => unfitFinding(each, around)), ...inTheWay(stand, cutOuts, around)];
}

function unfitFinding({ from, corner, wide, why }: NoBatten, { id }: Around): Finding {
  const place = { at: [from], on: [id] };
  const facts = { piece: text(id), corner: text(corner), found: text(corner), wide: mm(wide) };
  const defs = {
    unknown: noSuchCorner,
    "goes in": say.battenGoesIn,
    bolted: say.battenOnBolted,
    room: say.battenNoRoom,
  } as const;
  return raise(defs[why], { ...place, facts });
}
