import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { board, cutBy } from "../common/keys.js";

const diameter = { min: 20, max: 1200 };

/** The keys of a ring: a round board under a driver's frame. */
export function ringSchema(door: Door) {
  const chamfer = (edge: string) =>
    door
      .length({ min: 0.5, max: 50 })
      .optional()
      .describe(`Width of the 45 degree chamfer on the ${edge} edge of the face.`);
  return z.strictObject({
    kind: z.literal("ring"),
    board: board(),
    around: z.strictObject({ driver: name().describe("The box whose driver it goes round.") }),
    outside: door.length(diameter).describe("Outside diameter."),
    inside: door.length(diameter).optional().describe("Inside diameter; else the driver's cut-out."),
    recess: z
      .union([
        z.literal("frame"),
        z.strictObject({
          across: door.length(diameter).describe("Diameter of the recess."),
          deep: door.length({ min: 0.5, max: 60 }).describe("Depth of the recess."),
        }),
      ])
      .optional()
      .describe("Sunk for the driver's frame: `frame`, or a diameter and depth of its own."),
    chamfer: z.strictObject({ outside: chamfer("outer"), inside: chamfer("inner") }).optional(),
    "cut by": cutBy(),
  });
}

export type RingSpec = z.output<ReturnType<typeof ringSchema>>;
