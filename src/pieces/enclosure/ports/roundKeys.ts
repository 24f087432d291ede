import { z } from "zod";
import type { Door } from "../../../input/door.js";
import { name } from "../../../job/names.js";

const across = { min: 15, max: 600 };
const long = { min: 20, max: 3000 };
const widens = { min: 2, max: 300 };

/** Where the end of an elbow may point, as one sees its face from outside. */
export const elbowWays = ["up", "down", "left", "right"] as const;

/** The keys of what stands in a box and is round: ports of tube, and dowels as braces. */
export function roundKeys(door: Door) {
  return {
    "round ports": z.array(roundPortSchema(door)).min(1).max(8).optional().describe("Ports of tube, outside sizes."),
    dowels: z.array(dowelSchema(door)).min(1).max(24).optional().describe("Round bars from wall to wall, as braces."),
  };
}

function roundPortSchema(door: Door) {
  const flare = (which: string) =>
    z
      .strictObject({
        mouth: door.length(across).describe("Its widest, outside diameter."),
        long: door.length(widens).describe("How much of the port's length widens."),
      })
      .optional()
      .describe(`The port widens towards its ${which} end.`);
  const block = (where: string) =>
    z
      .strictObject({
        across: door.length(across).describe("Its side, or its diameter where it is round."),
        round: z.literal(true).optional().describe("A ring; else a square."),
        board: name().optional().describe("Its own board; else the box's."),
      })
      .optional()
      .describe(`Of board, glued round the tube ${where}.`);
  return z.strictObject({
    in: name().describe("The face it opens through."),
    at: door
      .point()
      .optional()
      .describe("Its middle from the face's lower left corner, seen from outside; else the face's middle."),
    outside: door.length(across).optional().describe("Outside diameter of the tube."),
    inside: door.length(across).optional().describe("Inside diameter; with its wall in place of the outside diameter."),
    wall: door.length({ min: 0.5, max: 30 }).optional().describe("Thickness of the tube's wall."),
    long: door.length(long).describe("Its length along the middle, from the outside of the wall it opens through."),
    hole: door
      .length(across)
      .optional()
      .describe("Diameter of its hole, where its maker gives one; else as wide as what passes it."),
    flange: z
      .strictObject({
        across: door.length(across).describe("Its diameter."),
        thick: door.length({ min: 1, max: 30 }).describe("How deep it is sunk."),
      })
      .optional()
      .describe("A flange at its outer end that is sunk flush into the panel."),
    flares: z
      .strictObject({ outer: flare("outer"), inner: flare("inner") })
      .optional()
      .describe("Ends that widen."),
    blocks: z
      .strictObject({ outer: block("behind its wall"), inner: block("at its inner end, flush with that") })
      .optional()
      .describe("Blocks that hold the ends of the tube."),
    elbow: z
      .strictObject({
        after: door.length(long).describe("Straight before it, from the outside of the wall."),
        radius: door.length(across).describe("Radius of its middle line."),
        turns: door
          .angle({ min: Math.PI / 36, max: Math.PI })
          .optional()
          .describe("How far it turns; else a quarter turn."),
        to: z.enum(elbowWays).describe("Where it turns to, seen from outside on its face."),
      })
      .optional()
      .describe("Bends the tube."),
  });
}

function dowelSchema(door: Door) {
  return z.strictObject({
    across: z.enum(["width", "depth", "height"]).describe("Which size of the box it crosses, from wall to wall."),
    at: door
      .point()
      .describe(
        "Its middle, from the outside of the left, rear or lower side: along the other two of width, depth and height, in that order.",
      ),
    thick: door.length({ min: 6, max: 100 }).describe("Its diameter."),
    in: name().optional().describe("Which chamber, where the box has several."),
  });
}

type Keys = { readonly [K in keyof ReturnType<typeof roundKeys>]: z.output<ReturnType<typeof roundKeys>[K]> };
export type RoundPortSpec = NonNullable<Keys["round ports"]>[number];
export type DowelSpec = NonNullable<Keys["dowels"]>[number];
