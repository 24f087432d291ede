import { z } from "zod";
import type { Door } from "../../input/door.js";
import { cornersSchema } from "../../input/outline.js";
import { name, words } from "../../job/names.js";
import { board, cutBy, rowName } from "../common/keys.js";
import { battenSchema } from "./battens/keys.js";
import { insideKeys } from "./chambers/keys.js";
import { jointForms } from "./form/meeting.js";
import { roundKeys } from "./ports/roundKeys.js";
import { hatchSchema } from "./removable/hatch/keys.js";
import { boltedSchema } from "./removable/keys.js";

const outside = { min: 60, max: 3000 };
const across = { min: -5000, max: 5000 };
const hole = { min: 8, max: 300 };

const onFace = "Its middle from the face's lower left corner, seen from outside; else the face's middle.";
const aFace = "The name of a face.";

/** The keys of an enclosure: a closed box, square or of any profile. */
export function enclosureSchema(door: Door) {
  const face = (what: string) => name().describe(what);
  return z.strictObject({
    kind: z.literal("enclosure"),
    board: board(),
    net: door
      .volume({ min: 0.5, max: 1000 })
      .optional()
      .describe("Net volume that the driver needs; one outside size may then be free."),
    outside: outsideSchema(door),
    ends: z
      .enum(["over", "between"])
      .optional()
      .describe(
        "Whether the two ends of the profile (cheeks, or top and bottom) cover the walls' edges or stand between them.",
      ),
    laps: z
      .array(face(aFace))
      .min(5)
      .max(60)
      .optional()
      .describe("All faces in order: of two neighbours the first runs over the other's edge."),
    joints: jointsSchema(door).optional(),
    panels: z.record(name(), panelSchema(door)).optional().describe("By face: what differs from the rest of the box."),
    flush: z
      .array(face(aFace))
      .max(60)
      .optional()
      .describe("Faces that are cut oversize where they run over their neighbours, and trimmed flush after glue-up."),
    "round over": z
      .strictObject({
        radius: door.length({ min: 1, max: 25 }),
        faces: z.array(face(aFace)).min(1).max(60).optional().describe("Round these faces; else all the outside."),
      })
      .optional()
      .describe("Outer edges that are rounded over after glue-up."),
    covered: z
      .strictObject({
        with: name().describe("Which of the job's coverings."),
        faces: z.array(face(aFace)).min(1).max(60).optional().describe("Which faces; else all."),
      })
      .optional()
      .describe("What the box is covered with: fit and loading opening use the covered size."),
    stands: standsSchema(door).optional(),
    driver: driverSchema(door).optional(),
    drivers: z.array(driverSchema(door)).min(1).max(12).optional().describe("Several drivers, each with its place."),
    terminal: terminalSchema(door).optional(),
    hatch: hatchSchema(door).optional(),
    battens: z.array(battenSchema(door)).min(1).max(30).optional().describe("Bars of board along inside corners."),
    terminals: z.array(terminalSchema(door)).min(1).max(12).optional().describe("Several, each with its place."),
    ...insideKeys(door),
    ...roundKeys(door),
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
    z
      .union([z.enum(movedSizes), door.length(outside)])
      .optional()
      .describe(`${what}; or free: moved until the volume is right; or largest: as large as the space allows.`);
  const profile = (what: string) => cornersSchema(door, name()).optional().describe(what);
  return z
    .strictObject({
      width: size("Outside size across the vehicle"),
      depth: size("Outside size along the vehicle"),
      height: size("Outside height"),
      side: profile(
        "Corners of the outside seen from the right side: x forward, y up; `side` names the wall that follows.",
      ),
      plan: profile(
        "Corners of the outside seen from above: x to the right, y forward; `side` names the wall that follows.",
      ),
    })
    .describe(
      "Width, depth and height; or the profile from the side and a width; or the profile in plan and a height.",
    );
}

function jointsSchema(door: Door) {
  return z
    .strictObject({
      form: z.enum(jointForms).optional().describe("Of every corner where nothing else is said."),
      deep: door
        .length({ min: 1, max: 30 })
        .optional()
        .describe("How deep a rebate or groove lets the other panel in; else half the board."),
      at: z
        .record(words(90), z.enum(jointForms))
        .optional()
        .describe("By corner: the names of its two faces, such as `top + rake: mitre`."),
    })
    .describe("How the panels meet.");
}

function panelSchema(door: Door) {
  return z.strictObject({
    board: name().optional().describe("Its own board."),
    double: name().optional().describe("Which board is glued behind it, between its neighbours."),
    bolted: boltedSchema(door).optional(),
    "set in": door
      .length({ min: 3, max: 200 })
      .optional()
      .describe("How far it lies inside the outline that its neighbours run out to."),
    "cut by": cutBy(),
  });
}

function driverSchema(door: Door) {
  return z.strictObject({
    is: name().describe("Which of the job's drivers."),
    in: name().describe("The face it sits in."),
    at: door.point().optional().describe(onFace),
    turned: door
      .angle({ min: -Math.PI, max: Math.PI })
      .optional()
      .describe("Turns it on its axis, against the clock, so that its screws miss what is behind."),
    recess: z.literal("frame").optional().describe("Sinks its frame flush into the panel."),
  });
}

function terminalSchema(door: Door) {
  return z.strictObject({
    in: name().describe("The face it sits in."),
    hole: z.union([door.size(hole), door.length(hole)]).describe("Width x height, or a diameter."),
    at: door.point().optional().describe(onFace),
    corners: z.enum(["round", "relieved"]).optional().describe("Relieved where something square seats in the hole."),
    displaces: door.volume({ min: 0, max: 10 }).optional().describe("What it takes of the air inside."),
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
      .describe("Moves the box until its (first) driver's axis lies on a reference line."),
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

/** What may stand for a size that is settled: by the volume, or by the space. */
export const movedSizes = ["free", "largest"] as const;

export const sizeNames = ["width", "depth", "height"] as const;
export type SizeName = (typeof sizeNames)[number];

export type EnclosureSpec = z.output<ReturnType<typeof enclosureSchema>>;
export type DriverSpec = NonNullable<EnclosureSpec["driver"]>;
export type TerminalSpec = NonNullable<EnclosureSpec["terminal"]>;

/** The drivers of a box, in the order in which they are named. */
export const driversOf = ({ driver, drivers }: EnclosureSpec): readonly DriverSpec[] => [
  ...(driver ? [driver] : []),
  ...(drivers ?? []),
];
