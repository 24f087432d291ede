import { z } from "zod";
import type { Door } from "../../../input/door.js";
import { rules } from "../../../shop/rules.js";
import { rowName } from "../../common/keys.js";

const thick = { min: 0.5, max: 20 };

/** A gasket by its clamped thickness alone, or as bought and as clamped. */
export function gasketSchema(door: Door) {
  return z
    .union([
      door.length(thick),
      z.strictObject({
        loose: door.length(thick).describe("Its thickness as bought."),
        clamped: door.length(thick).describe("Its thickness when the bolts are tight."),
      }),
    ])
    .describe("How thick its gasket is when clamped; or `loose` and `clamped`.");
}

/** The keys of a panel that is bolted on and comes off again. */
export function boltedSchema(door: Door) {
  return z
    .strictObject({
      with: rowName().describe("The bolt, without its length."),
      insert: rowName()
        .optional()
        .describe("The threaded insert; else the longest for the bolt's thread that stays blind in one board."),
      every: door.length({ min: 50, max: 600 }).optional().describe("Between bolts at most; else 150 mm."),
      gasket: gasketSchema(door),
      wide: door
        .length({ min: 15, max: 120 })
        .optional()
        .describe("How wide the battens under it are; else 30 mm, or what the insert needs."),
    })
    .describe("Bolted on a gasket instead of glued, on battens that run round inside under it.");
}

export type GasketSpec = z.output<ReturnType<typeof gasketSchema>>;
export type BoltedSpec = z.output<ReturnType<typeof boltedSchema>>;

export const clampedOf = (gasket: GasketSpec): number => (typeof gasket === "number" ? gasket : gasket.clamped);

/** As bought: where nobody says, foam that is clamped to half. */
export const looseOf = (gasket: GasketSpec): number =>
  typeof gasket === "number" ? gasket / rules.clampedShare.value : gasket.loose;
