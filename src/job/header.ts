import { z } from "zod";
import { type LengthUnit, lengthUnits } from "../input/length.js";
import type { Show } from "../input/show.js";
import { methods } from "../model/shop.js";
import { words } from "./names.js";

/** What `show` takes, and what it means. */
const shows = {
  mm: { unit: "mm" },
  "in 1/8": { unit: "in", denominator: 8 },
  "in 1/16": { unit: "in", denominator: 16 },
  "in 1/32": { unit: "in", denominator: 32 },
  "in 1/64": { unit: "in", denominator: 64 },
} as const satisfies Record<string, Show>;
const showNames = ["mm", "in 1/8", "in 1/16", "in 1/32", "in 1/64"] as const satisfies readonly (keyof typeof shows)[];

/** Where the file does not say how to show sizes: as it writes them. */
export function usualShow(units: LengthUnit): Show {
  return units === "in" ? shows["in 1/16"] : shows.mm;
}

/** The single values at the top of a job file, without its version. */
export const headerShape = {
  title: words(100).describe("What the job is: it stands on every drawing."),
  reference: words(40).optional().describe("The job's number in the workshop."),
  customer: words(80).optional().describe("Whose vehicle it is."),
  date: z.iso.date().optional().describe("Day of the drawings: 2026-03-31."),
  units: z.enum(lengthUnits).describe("What a length without a unit means."),
  show: z
    .enum(showNames)
    .transform((name): Show => shows[name])
    .optional()
    .describe("How sizes are shown: mm, or inches in fractions. Changes nothing that is cut."),
  shop: words(200).optional().describe("The shop file, from this file's folder."),
  "cut by": z.enum(methods).optional().describe("How parts are cut where nothing else is said."),
};
