import { intersection } from "../../../geometry/boolean.js";
import { inverse, place } from "../../../geometry/frame.js";
import { areaOfRegion } from "../../../geometry/measure.js";
import type { Point } from "../../../geometry/profile.js";
import { polygon } from "../../../geometry/shapes.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { type Finding, mm, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { noSuchCorner } from "../findings.js";
import { cornersOf } from "../removable/corners.js";
import { type CutOut, inTheWay, roundTheMiddle } from "../removable/inTheWay.js";
import type { Shape } from "../shape.js";
import type { Battens, CornerBatten, NoBatten } from "./battens.js";
import * as say from "./findings.js";

/** What is wrong with the battens in a box's corners. */
export function battenFindings(
  { stand, unfit }: Battens,
  cutOuts: readonly CutOut[],
  shape: Shape,
  around: Around,
): readonly Finding[] {
  return [
    ...unfit.map((each) => unfitFinding(each, around)),
    ...inTheWay(stand, cutOuts, around),
    ...stand.flatMap((batten) => inPorts(batten, shape, around)),
  ];
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

/** Slot ports reach through their whole chamber, so that what of the section they take tells. */
function inPorts(batten: CornerBatten, { fitOut, inside }: Shape, { id }: Around): readonly Finding[] {
  const seen = inverse(inside.frame);
  const places = cornersOf(batten.sheet).map((corner): Point => {
    const [x, y] = place(seen, corner);
    return { x, y };
  });
  const lies = { outer: polygon(roundTheMiddle(places), "batten"), holes: [] };
  return fitOut.slots
    .filter(({ chamber }) => chamber === batten.chamber)
    .filter(({ taken }) => {
      const shared = intersection(lies, { outer: taken, holes: [] });
      return shared.reduce((sum, region) => sum + areaOfRegion(region), 0) > tolerance.overlapVolume;
    })
    .map(({ role }) => {
      const facts = {
        batten: text(batten.role.replaceAll(".", " ")),
        corner: text(`${batten.flat.name} + ${batten.along.name}`),
        port: text(role.replaceAll(".", " ")),
      };
      return raise(say.battenInPort, { at: [batten.from], on: [partId(id, batten.role)], facts });
    });
}
