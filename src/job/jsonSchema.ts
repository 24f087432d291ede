import { z } from "zod";
import type { PieceKind } from "../model/piece.js";
import { jobSchema } from "./schema.js";

/**
 * The JSON Schema (draft 2020-12) of a job file, for editors that complete and check. Its patterns take every way of
 * writing a length; bare fractions too, which only files in inches may use.
 */
export function jobJsonSchema(kinds: readonly PieceKind[]): object {
  return z.toJSONSchema(jobSchema(kinds, "in"), { io: "input", reused: "inline" });
}
