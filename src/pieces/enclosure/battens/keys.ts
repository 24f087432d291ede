import { z } from "zod";
import type { Door } from "../../../input/door.js";
import { name, words } from "../../../job/names.js";

/** The keys of battens along inside corners. */
export function battenSchema(door: Door) {
  const corner = words(90);
  return z.strictObject({
    along: z
      .union([corner, z.array(corner).min(1).max(30)])
      .describe("The corner, or several, by their two faces, such as `bottom + left`: it lies flat on the first."),
    wide: door
      .length({ min: 10, max: 200 })
      .describe("How wide it is on the face it lies on; it is as thick as its board."),
    board: name().optional().describe("Its own board; else the box's."),
  });
}

export type BattenSpec = z.output<ReturnType<typeof battenSchema>>;

/** The corners that an entry names, each with its path below the entry. */
export const cornersNamed = (along: BattenSpec["along"]) =>
  typeof along === "string"
    ? [{ corner: along, path: ["along"] as const }]
    : along.map((corner, i) => ({ corner, path: ["along", i] as const }));
