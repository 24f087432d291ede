import { z } from "zod";
import type { Door } from "../../../../input/door.js";
import { name } from "../../../../job/names.js";
import { rowName } from "../../../common/keys.js";
import { gasketSchema } from "../keys.js";

const side = { min: 40, max: 1000 };

/** The keys of a service hatch: an opening in a face, and the cover that is bolted over it from outside. */
export function hatchSchema(door: Door) {
  return z
    .strictObject({
      in: name().describe("The face it opens."),
      at: door
        .point()
        .optional()
        .describe("Its middle from the face's lower left corner, seen from outside; else the face's middle."),
      size: door.size(side).describe("Width x height of the opening."),
      with: rowName().describe("The bolt, without its length."),
      insert: rowName()
        .optional()
        .describe("The threaded insert; else the longest for the bolt's thread that stays blind in the panel."),
      every: door.length({ min: 50, max: 600 }).optional().describe("Between bolts at most; else 150 mm."),
      gasket: gasketSchema(door),
      overlap: door
        .length({ min: 15, max: 200 })
        .optional()
        .describe("How far the cover runs over the opening's edges; else 30 mm, or what the inserts need."),
      round: door.length({ min: 3, max: 300 }).optional().describe("Radius of the opening's corners; else 6 mm."),
      board: name().optional().describe("Which board the cover is; else the box's."),
    })
    .describe("An opening with a cover that is bolted over it from outside.");
}

export type HatchSpec = z.output<ReturnType<typeof hatchSchema>>;
