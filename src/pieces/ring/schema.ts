import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { cutBy } from "../common/keys.js";

const diameter = { min: 20, max: 1200 };

/** The keys of a ring: a round board under a driver's frame. */
export function ringSchema(door: Door) {
  const chamfer = () => door.length({ min: 0.5, max: 50 }).optional();
  return z.strictObject({
    kind: z.literal("ring"),
    board: name(),
    around: z.strictObject({ driver: name() }),
    outside: door.length(diameter),
    inside: door.length(diameter).optional(),
    recess: z
      .union([
        z.literal("frame"),
        z.strictObject({ across: door.length(diameter), deep: door.length({ min: 0.5, max: 60 }) }),
      ])
      .optional(),
    chamfer: z.strictObject({ outside: chamfer(), inside: chamfer() }).optional(),
    "cut by": cutBy(),
  });
}

export type RingSpec = z.output<ReturnType<typeof ringSchema>>;
