import { z } from "zod";
import type { FindingDef } from "../input/finding.js";
import type { LengthUnit } from "../input/length.js";
import type { Show } from "../input/show.js";
import type { Method } from "../model/shop.js";
import { words } from "./names.js";

export const lengthUnits = ["mm", "cm", "in"] as const satisfies readonly LengthUnit[];
export const methods = ["saw", "hand", "cnc"] as const satisfies readonly Method[];

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

export const missingVersion: FindingDef = {
  code: "missing-version",
  severity: "error",
  words: "the file does not say which version it is written for",
  next: "write version: {allowed} on the first line",
  explain: "The version tells how the file is to be read, now and when later versions know more keys.",
};

export const unknownVersion: FindingDef = {
  code: "unknown-version",
  severity: "error",
  words: "version {found} is not known",
  next: "write version: {allowed}, or use a newer program",
  explain: "This program knows the listed versions. A file of a later one may mean things that it would misread.",
};
