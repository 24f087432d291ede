import { z } from "zod";
import type { Door } from "../../input/door.js";
import { name } from "../../job/names.js";
import { board, cutBy, rowName } from "../common/keys.js";

/** The keys of a plate: a flat trim board over the surveyed outline. */
export function plateSchema(door: Door) {
  const gap = (what: string) => door.length({ min: 0, max: 2000 }).optional().describe(what);
  const notch = notchSchema(door);
  return z.strictObject({
    kind: z.literal("plate"),
    board: board(),
    outline: z.literal("space").describe("The surveyed outline of the space, less gaps and covering."),
    height: z
      .union([z.string().regex(topOf), door.length({ min: -1000, max: 3000 })])
      .describe("`top of NAME` of the piece that it lies on, or the height of its underside."),
    gap: gap("Finished gap to the sides of the space."),
    sides: z
      .record(
        name(),
        z.strictObject({
          gap: gap("Finished gap at this side."),
          bare: z.boolean().optional().describe("No covering goes over this side."),
          against: name().optional().describe("What this side stands beside, for the drawings."),
        }),
      )
      .optional()
      .describe("Sides that differ from the rest, by the names in the space's outline."),
    notch: z
      .union([notch, z.array(notch).max(40)])
      .optional()
      .describe("Cut-outs round what stays in the vehicle: one, or a list."),
    "open over": z
      .strictObject({
        driver: name().optional().describe("The box whose driver shows through."),
        ring: name().optional().describe("The ring that shows through."),
        gap: gap("Reveal round it, finished."),
        edge: z
          .strictObject({ chamfer: door.length({ min: 0.5, max: 50 }).describe("Width of a 45 degree chamfer.") })
          .optional(),
      })
      .optional()
      .describe("A round opening over a driver, or over the ring round it."),
    covered: coveredSchema(door).optional(),
    bolted: z
      .strictObject({
        to: name().describe("The piece whose top takes the threaded inserts."),
        with: rowName().describe("The bolt, without its length."),
        insert: rowName().optional().describe("The threaded insert; else the longest for the bolt's thread."),
        count: z.int().min(2).max(60).describe("How many bolts."),
        "set in": door.length({ min: 10, max: 500 }).describe("From the edge of the overlap to the bolts."),
      })
      .optional(),
    "cut by": cutBy(),
  });
}

function notchSchema(door: Door) {
  return z.strictObject({
    around: name().describe("Which obstacle of the space."),
    round: door.length({ min: 0, max: 300 }).optional().describe("Finished radius of its inside corners."),
    "open to": name().optional().describe("The side of the space that it opens to; without it, it is a hole."),
  });
}

function coveredSchema(door: Door) {
  return z.strictObject({
    with: name().describe("Which of the job's coverings."),
    edges: z
      .union([z.literal("all"), z.array(name()).max(80)])
      .optional()
      .describe("The edges that it goes over: all, or sides by name, `notch`, `opening`."),
    wrap: door.length({ min: 0, max: 300 }).optional().describe("How far it goes round on to the back."),
    back: z.enum(["groove", "rebate", "none"]).optional().describe("What the back gets, for a clean end."),
  });
}

/** "top of box": the plate lies on that piece. */
export const topOf = /^top of \S.*$/;

export type PlateSpec = z.output<ReturnType<typeof plateSchema>>;
export type NotchSpec = Exclude<NonNullable<PlateSpec["notch"]>, readonly unknown[]>;

export function notchesOf(spec: PlateSpec): readonly NotchSpec[] {
  if (spec.notch === undefined) return [];
  return Array.isArray(spec.notch) ? spec.notch : [spec.notch];
}

/** The piece that the plate lies on, where its height names one. */
export function bearerOf(spec: PlateSpec): string | undefined {
  return typeof spec.height === "string" ? spec.height.slice("top of ".length).trim() : undefined;
}
