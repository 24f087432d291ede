import { z } from "zod";
import type { Door } from "../../../input/door.js";
import { name } from "../../../job/names.js";

const sizes = ["width", "depth", "height"] as const;

const ownBoard = () => name().optional().describe("Its own board; else the box's.");
const inChamber = () => name().optional().describe("Which chamber, where the box has several.");
const across = () =>
  z.enum(sizes).describe("Which size of the box it crosses: a board across the width stands between left and right.");

const fromOutside = { min: 0, max: 3000 };

/** The keys of what stands inside a box: dividers and the chambers they make, braces, and ports made of panels. */
export function insideKeys(door: Door) {
  return {
    dividers: z
      .array(dividerSchema(door))
      .min(1)
      .max(12)
      .optional()
      .describe("Boards that part the box into chambers."),
    chambers: z
      .record(
        name(),
        z.strictObject({ net: door.volume({ min: 0.5, max: 1000 }).describe("Net volume wanted of it.") }),
      )
      .optional()
      .describe("What is wanted of each chamber, by the names that the dividers give."),
    braces: z.array(braceSchema(door)).min(1).max(24).optional().describe("Boards with windows that stiffen the box."),
    "slot ports": z.array(slotPortSchema(door)).min(1).max(8).optional().describe("Ports made of panels."),
  };
}

function dividerSchema(door: Door) {
  return z.strictObject({
    across: across(),
    at: z
      .union([z.literal("middle"), z.literal("free"), door.length(fromOutside)])
      .describe(
        "From the outside of the left, rear or lower side to its nearer side; or middle; or free: moved until the chamber on that side has its net volume.",
      ),
    between: z
      .tuple([name(), name()])
      .optional()
      .describe(
        "The chambers on its two sides, the left, rear or lower one first; else left and right, rear and front, or lower and upper.",
      ),
    board: ownBoard(),
  });
}

function braceSchema(door: Door) {
  return z.strictObject({
    across: across(),
    at: z
      .union([z.literal("middle"), door.length(fromOutside)])
      .describe("From the outside of the left, rear or lower side to its nearer side; or middle."),
    in: inChamber(),
    border: door.length({ min: 10, max: 500 }).optional().describe("Board left round its windows; else 50 mm."),
    windows: z.int().min(1).max(8).optional().describe("How many openings, side by side; else one."),
    round: door.length({ min: 3, max: 300 }).optional().describe("Radius of its windows' corners; else 25 mm."),
    board: ownBoard(),
  });
}

function slotPortSchema(door: Door) {
  return z.strictObject({
    in: name().describe("The wall it opens through."),
    beside: name().describe("The wall, next to that one, that it runs along."),
    gap: door.length({ min: 10, max: 300 }).describe("Between that wall and its panel."),
    long: door
      .length({ min: 20, max: 3000 })
      .describe("Its length along the middle, from the outside of the wall it opens through."),
    turns: z.literal(true).optional().describe("Turns the corner at the end of that wall and goes on along the next."),
    chamber: inChamber(),
    board: ownBoard(),
  });
}

type Keys = { readonly [K in keyof ReturnType<typeof insideKeys>]: z.output<ReturnType<typeof insideKeys>[K]> };
export type DividerSpec = NonNullable<Keys["dividers"]>[number];
export type BraceSpec = NonNullable<Keys["braces"]>[number];
export type SlotPortSpec = NonNullable<Keys["slot ports"]>[number];
