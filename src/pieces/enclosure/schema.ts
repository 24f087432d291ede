import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { board, cutBy, rowName } from "../common/keys.js";
import { faceNames } from "./faces.js";

const outside = { min: 60, max: 3000 };
const across = { min: -5000, max: 5000 };
const hole = { min: 8, max: 300 };

const onFace = "Its middle from the face's lower left corner, seen from outside; else the face's middle.";

/** The keys of an enclosure: a closed box of six panels. */
export function enclosureSchema(door: Door) {
  const face = (what: string) => z.enum(faceNames).describe(what);
  return z.strictObject({
    kind: z.literal("enclosure"),
    board: board(),
    net: door
      .volume({ min: 0.5, max: 1000 })
      .optional()
      .describe("Net volume that the driver needs; one outside size may then be free."),
    outside: outsideSchema(door),
    laps: z
      .array(face("A face."))
      .length(6)
      .optional()
      .describe("The six faces in order: of two neighbours the first runs over the other's edge."),
    flush: z
      .array(face("A face."))
      .max(6)
      .optional()
      .describe("Faces that are cut oversize where they run over their neighbours, and trimmed flush after glue-up."),
    stands: standsSchema(door).optional(),
    driver: z
      .strictObject({
        is: name().describe("Which of the job's drivers."),
        in: face("The face it sits in."),
        at: door.point().optional().describe(onFace),
      })
      .optional(),
    terminal: z
      .strictObject({
        in: face("The face it sits in."),
        hole: z.union([door.size(hole), door.length(hole)]).describe("Width x height, or a diameter."),
        at: door.point().optional().describe(onFace),
        corners: z
          .enum(["round", "relieved"])
          .optional()
          .describe("Relieved where something square seats in the hole."),
        displaces: door.volume({ min: 0, max: 10 }).optional().describe("What it takes of the air inside."),
      })
      .optional(),
    screws: z
      .union([
        z.literal("none"),
        z.strictObject({ with: rowName().describe("The screw, with or without its length.") }),
      ])
      .optional()
      .describe("Screws of the joints, such as {with: 4.0 x 45}; none where glue alone holds them."),
    "held by": heldSchema()
      .optional()
      .describe("How it is fixed to the vehicle: a loose box becomes a projectile in a crash."),
    "cut by": cutBy(),
  });
}

function outsideSchema(door: Door) {
  const size = (what: string) =>
    z.union([z.literal("free"), door.length(outside)]).describe(`${what}, or free: moved until the volume is right.`);
  return z.strictObject({
    width: size("Outside size across the vehicle"),
    depth: size("Outside size along the vehicle"),
    height: size("Outside height"),
  });
}

function standsSchema(door: Door) {
  return z.strictObject({
    on: z.literal("floor").optional().describe("It stands on the floor."),
    x: door.length(across).optional().describe("Of its left rear corner, from the datum, to the right."),
    y: door.length(across).optional().describe("Of its left rear corner, from the datum, forward."),
    z: door.length({ min: -1000, max: 3000 }).optional().describe("Of its underside, where that is not the floor."),
    "line up": z
      .strictObject({ driver: name().describe("A reference line of the space.") })
      .optional()
      .describe("Moves the box until its driver's axis lies on a reference line."),
  });
}

function heldSchema() {
  const some = (what: string) => z.int().min(1).max(20).optional().describe(`How many ${what}.`);
  return z.strictObject({
    straps: some("straps"),
    bolts: some("bolts"),
    brackets: some("brackets"),
    to: z.string().min(1).max(120).describe("What in the vehicle they hold to: body structure, not trim."),
  });
}

export const sizeNames = ["width", "depth", "height"] as const;

export type EnclosureSpec = z.output<ReturnType<typeof enclosureSchema>>;
