import { z } from "zod";
import { doorFor } from "../input/door.js";
import type { LengthUnit } from "../input/length.js";
import type { PieceKind } from "../model/piece.js";
import { boardSchema, coveringSchema } from "./boards.js";
import { driverSchema } from "./driver.js";
import { headerShape } from "./header.js";
import { name } from "./names.js";
import { obstacleSchema, spaceSchema } from "./space.js";

/** Versions of the job file that can be read. */
export const jobVersions = [1] as const;

/**
 * The whole job file as one schema, for the JSON Schema. `parseJob` reads a file with the same schemas one by one, so
 * that it can withhold a single piece.
 */
export function jobSchema(kinds: readonly PieceKind[], unit: LengthUnit) {
  const door = doorFor(unit);
  const byName = <T>(entry: z.ZodType<T>) => z.record(name(), entry);
  return z.strictObject({
    version: z.literal(jobVersions).describe("Version of the job file."),
    ...headerShape,
    boards: byName(boardSchema(door)).nullish().describe("The boards of this job, by name."),
    space: spaceSchema(
      door,
      byName(obstacleSchema(door))
        .nullish()
        .transform((all) => all ?? {}),
    ),
    drivers: byName(driverSchema(door)).nullish().describe("Data sheets of the drivers, by name."),
    coverings: byName(coveringSchema(door)).nullish().describe("Carpets, cloths and leathers, by name."),
    pieces: byName(z.union(kinds.map((kind) => kind.schema(door))))
      .nullish()
      .describe("What is to be made, by name."),
  });
}
