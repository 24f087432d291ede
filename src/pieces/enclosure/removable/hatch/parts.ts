import { compose, shifted } from "../../../../geometry/frame.js";
import { extentsOf } from "../../../../geometry/measure.js";
import { mm, type Outcome, text } from "../../../../input/finding.js";
import { featureId, partId } from "../../../../model/ids.js";
import type { Axis } from "../../../../model/joint.js";
import type { Part } from "../../../../model/part.js";
import type { Around } from "../../../../model/piece.js";
import { type Draft, makePart } from "../../../common/part.js";
import type { EnclosureSpec } from "../../schema.js";
import { clampedOf } from "../keys.js";
import type { Due } from "../steps.js";
import { boltAxis, coverFrame, coverRole, type Hatch } from "./hatch.js";

const boltName = (index: number) => `hatch.${index + 1}`;

/** The cover, with the clearance holes of its bolts. */
export function coverPart(hatch: Hatch, spec: EnclosureSpec, around: Around): Outcome<Part> {
  const { cover, bolts, bolt, board, from } = hatch;
  const { min } = extentsOf(cover);
  const outer = cover.map((corner) => ({ ...corner, x: corner.x - min.x, y: corner.y - min.y }));
  const own = spec["cut by"];
  const holes = bolts.map(({ x, y }, index): Draft => {
    const d = bolt?.clearance.medium ?? 0;
    const cut = { kind: "hole", at: { x: x - min.x, y: y - min.y }, d, depth: "through" } as const;
    return { name: boltName(index), from: [from], axis: boltAxis(around, index), cut };
  });
  return makePart({
    piece: around.id,
    role: coverRole,
    from: [from],
    board,
    features: [
      { name: "outline", from: [from], cut: { kind: "outline", region: { outer, holes: [] }, corner: "sharp" } },
      ...holes,
    ],
    ...(own === undefined ? {} : { cutBy: own }),
    at: compose(coverFrame(hatch), shifted(min.x, min.y, 0)),
  });
}

/** The bolts' axes, box frame, as far as the cover goes: heads on its face; the box adds its threads. */
export function coverAxes(hatch: Hatch, fastener: string | undefined, around: Around): readonly Axis[] {
  if (fastener === undefined) return [];
  const part = partId(around.id, coverRole);
  return hatch.bolts.map(({ x, y }, index) => ({
    id: boltAxis(around, index),
    from: [hatch.from],
    ray: compose(coverFrame(hatch), shifted(x, y, 0)),
    fastener,
    stack: [{ part, feature: featureId(part, boltName(index)), role: "clearance" as const }],
  }));
}

/** When all else is in. */
export function hatchSteps({ spec, face }: Hatch, isCovered: boolean, { id }: Pick<Around, "id">): readonly Due[] {
  const bare = isCovered ? "Cut the covering of {face} back to the cover's outline, lay" : "Lay";
  return [
    {
      name: "bolt hatch",
      parts: [partId(id, coverRole)],
      words: `${bare} the gasket round the opening in {face}, its ends tight against each other, punch it at the inserts, and bolt the hatch's cover on: all bolts loose first, then crosswise until the gasket is {clamped} thick`,
      facts: { face: text(face.name), clamped: mm(clampedOf(spec.gasket)) },
      cautions: [],
    },
  ];
}
