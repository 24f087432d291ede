import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { cutBy, rowName } from "../common/keys.js";
import { faceNames } from "./faces.js";

const side = { min: 60, max: 3000 };

/** The keys of an enclosure: a closed box of six panels. */
export function enclosureSchema(door: Door) {
  const size = () => z.union([z.literal("free"), door.length(side)]);
  return z.strictObject({
    kind: z.literal("enclosure"),
    board: name(),
    net: door.volume({ min: 0.5, max: 1000 }).optional(),
    outside: z.strictObject({ width: size(), depth: size(), height: size() }),
    laps: z.array(z.enum(faceNames)).length(6).optional(),
    stands: z
      .strictObject({
        on: z.literal("floor").optional(),
        x: door.length({ min: -5000, max: 5000 }).optional(),
        y: door.length({ min: -5000, max: 5000 }).optional(),
        z: door.length({ min: -1000, max: 3000 }).optional(),
        "line up": z.strictObject({ driver: name() }).optional(),
      })
      .optional(),
    driver: z.strictObject({ is: name(), in: z.enum(faceNames), at: door.point().optional() }).optional(),
    terminal: z
      .strictObject({
        in: z.enum(faceNames),
        hole: z.union([door.size({ min: 8, max: 300 }), door.length({ min: 8, max: 300 })]),
        at: door.point().optional(),
        corners: z.enum(["round", "relieved"]).optional(),
        displaces: door.volume({ min: 0, max: 10 }).optional(),
      })
      .optional(),
    screws: z.union([z.literal("none"), z.strictObject({ with: rowName() })]).optional(),
    "held by": z
      .strictObject({
        straps: z.int().min(1).max(20).optional(),
        bolts: z.int().min(1).max(20).optional(),
        brackets: z.int().min(1).max(20).optional(),
        to: z.string().min(1).max(120),
      })
      .optional(),
    "cut by": cutBy(),
  });
}

export const sizeNames = ["width", "depth", "height"] as const;

export type EnclosureSpec = z.output<ReturnType<typeof enclosureSchema>>;
