import { nearestOn } from "../geometry/distance.js";
import { pointInProfile } from "../geometry/inside.js";
import type { Profile } from "../geometry/profile.js";
import { circle } from "../geometry/shapes.js";
import type { Registration } from "../model/build.js";
import { pinsOn } from "../process/pins.js";
import type { NestStock } from "./engine.js";

type Board = Pick<NestStock, "length" | "width" | "outline">;

/**
 * What parts keep clear of round the dowels of a sheet that is turned over: a disc about each. Sheet frame, mm. The
 * parts' gap comes on top.
 */
export function dowelZones(row: Board, registration: Registration): readonly Profile[] {
  return pinsOn(registration, row).map((at) => circle(at, registration.keepOff, "dowel"));
}

/** Whether both dowels stand in board all round: an odd offcut may lack it there, and cannot be turned over then. */
export function takesDowels(row: Board, registration: Registration): boolean {
  const { keepOff } = registration;
  const { outline } = row;
  return pinsOn(registration, row).every(
    (at) =>
      Math.min(at.x, row.length - at.x, at.y, row.width - at.y) >= registration.d / 2 &&
      (outline === undefined || (pointInProfile(outline, at) && nearestOn(outline, at)!.distance >= keepOff)),
  );
}
