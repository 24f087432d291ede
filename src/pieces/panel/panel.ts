import { z } from "zod";
import { shifted } from "../../geometry/frame.js";
import { fillet } from "../../geometry/corners.js";
import type { Profile } from "../../geometry/profile.js";
import { circle, rectangle } from "../../geometry/shapes.js";
import type { Door } from "../../input/door.js";
import { below, type FindingDef, type Origin, type Outcome, raise } from "../../input/finding.js";
import { cornersSchema, outlineOf } from "../../job/outline.js";
import type { Around, Built, Offer, PieceKind, Reference } from "../../model/piece.js";
import { cutBy, name } from "../common/keys.js";
import { type Draft, makePart } from "../common/part.js";

/** The keys of a plain panel: any outline with holes. */
function panelSchema(door: Door) {
  const range = { min: 1, max: 3600 };
  return z.strictObject({
    kind: z.literal("panel"),
    board: name(),
    outline: z.union([door.size(range), cornersSchema(door)]),
    holes: z
      .record(
        name(),
        z.strictObject({
          at: door.point(),
          across: door.length({ min: 0.5, max: 2000 }),
          deep: door.length({ min: 0.5, max: 100 }).optional(),
          from: z.enum(["face", "back"]).optional(),
        }),
      )
      .optional(),
    openings: z
      .record(
        name(),
        z.strictObject({ at: door.point(), size: door.size(range), round: door.length({ min: 0, max: 1000 }).optional() }),
      )
      .optional(),
    lies: z
      .strictObject({
        x: door.length({ min: -5000, max: 5000 }),
        y: door.length({ min: -5000, max: 5000 }),
        z: door.length({ min: -1000, max: 3000 }),
      })
      .optional(),
    "cut by": cutBy(),
  });
}

export type PanelSpec = z.output<ReturnType<typeof panelSchema>>;

/** A plain panel: the way out where no other kind fits. With `lies` it lies flat in the vehicle, face up. */
export const panel: PieceKind<PanelSpec> = {
  kind: "panel",
  schema: panelSchema,
  findings: [],
  refs: (spec: PanelSpec, at: Origin): readonly Reference[] => [{ kind: "board", name: spec.board, at: below(at, "board") }],
  free: () => undefined,
  offer: offerPanel,
  ask: () => ({ value: [], findings: [] }),
  miss: () => 0,
  build: buildPanel,
};

export type { Around, Built, FindingDef, Offer, Outcome, Profile };
export { circle, fillet, makePart, raise, rectangle, shifted, outlineOf };
export type { Draft };
