import { driverBodyL } from "../../../acoustics/driverBody.js";
import { thickOf } from "../form/face.js";
import type { Seat } from "./seats.js";

/**
 * What a driver takes of the air behind it, L: by its maker's figure; where the data sheet has none, by its sizes, a
 * little more than it really is. None where those are not known either.
 */
export function displacementOf({ name, driver, face, lift }: Seat): { what: string; litres: number } | undefined {
  if (driver.displaces !== undefined) return { what: name, litres: driver.displaces };
  const { depth, magnet } = driver;
  if (depth === undefined || magnet === undefined) return undefined;
  const body = { cutOut: driver["cut-out"], depth, magnet };
  return { what: `${name} by its sizes`, litres: driverBodyL(body, Math.max(0, thickOf(face) + lift)) };
}
