import type { Point } from "../../geometry/profile.js";
import type { Driver } from "../../model/job.js";
import type { Screw, Shop } from "../../model/shop.js";
import { screwRow, splitScrew } from "../../shop/lookups.js";
import { rules } from "../../shop/rules.js";
import { boltCircle } from "./boltCircle.js";

/** How a driver is screwed down: where, with what, and how far the screw goes in below the underside of its frame. */
export type DriverScrews = {
  readonly points: readonly Point[];
  readonly row: Screw;
  readonly name: string;
  /** From the underside of the frame to the screw's tip, mm. */
  readonly reach: number;
};

/** What the data sheet says of the driver's screws, about its axis; nothing where it does not say. */
export function driverScrewsOf(driver: Driver, shop: Shop): DriverScrews | undefined {
  const bolts = driver.bolts;
  const split = bolts?.screw === undefined ? undefined : splitScrew(bolts.screw);
  const row = split && screwRow(shop, split.row);
  if (bolts === undefined || split === undefined || row === undefined) return undefined;
  return {
    points: boltCircle(bolts.circle, bolts.holes, bolts.start ?? 0),
    row,
    name: bolts.screw!,
    reach: split.length - (driver.flange ?? 0),
  };
}

/** How deep a pilot is drilled for a screw that goes in this far: a little deeper than its tip. */
export function pilotDepth(reach: number, thickness: number): number | "through" {
  const depth = reach + rules.pilotDeeper.value;
  return depth >= thickness ? "through" : depth;
}
