import { z } from "zod";
import type { Door } from "../../input/door.js";
import { cornersSchema } from "../../input/outline.js";
import { name } from "../../job/names.js";
import { board, cutBy } from "../common/keys.js";

const size = { min: 1, max: 3600 };
const across = { min: 0.5, max: 2000 };

/** The keys of a plain panel: any outline with holes and openings. */
export function panelSchema(door: Door) {
  const where = (most: number) => door.length({ min: -most, max: most });
  return z.strictObject({
    kind: z.literal("panel"),
    board: board(),
    outline: z
      .union([door.size(size), cornersSchema(door, name())])
      .describe("Length x width, or corners like those of the space."),
    holes: z
      .record(
        name(),
        z.strictObject({
          at: door.point(),
          across: door.length(across),
          deep: door.length({ min: 0.5, max: 100 }).optional(),
          from: z.enum(["face", "back"]).optional(),
        }),
      )
      .optional(),
    openings: z
      .record(
        name(),
        z.strictObject({
          at: door.point(),
          size: door.size(size),
          round: door.length({ min: 0, max: 1000 }).optional(),
        }),
      )
      .optional(),
    bevels: z
      .record(
        name(),
        z.strictObject({
          angle: door.angle({ min: Math.PI / 180, max: Math.PI / 4 }),
          wider: z.enum(["face", "back"]).default("face"),
        }),
      )
      .optional()
      .describe("By side: near, right, far, left of a plain size; the side's own name where corners are given."),
    lies: z
      .strictObject({ x: where(5000), y: where(5000), z: where(3000) })
      .optional()
      .describe("Where its corner lies, flat in the vehicle, face up; without it the panel is only cut."),
    "cut by": cutBy(),
  });
}

export type PanelSpec = z.output<ReturnType<typeof panelSchema>>;
