import { z } from "zod";
import type { Door } from "../input/door.js";
import { words } from "./names.js";

/** A board of the job: which stock of the shop, and what its thickness measured. */
export function boardSchema(door: Door) {
  return z.strictObject({
    stock: words(60).describe("The shop file's name of the board, such as mdf-18."),
    measured: door
      .length({ min: 1, max: 80 })
      .optional()
      .describe("Thickness measured on the sheets at hand; every joint goes by it."),
  });
}

/** A covering of the job; what it leaves out comes from the shop's row. */
export function coveringSchema(door: Door) {
  return z.strictObject({
    stock: words(60).describe("The shop file's name of the covering, such as box-carpet."),
    thick: door.length({ min: 0.1, max: 30 }).optional().describe("Thickness as laid, under light pressure."),
    clamped: door.length({ min: 0, max: 30 }).optional().describe("Thickness where it is clamped under a panel."),
  });
}
