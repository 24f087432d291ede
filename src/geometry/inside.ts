import { nearestOn } from "./distance.js";
import type { Point, Profile, Region } from "./profile.js";
import { tolerance } from "./tolerance.js";
import { winding } from "./winding.js";

/** Whether a point lies in the profile. Its edge belongs to it: a point on it, but for noise, is inside. */
export function pointInProfile(profile: Profile, p: Point): boolean {
  return winding(profile, p) !== 0 || onEdge(profile, p);
}

/** Whether a point lies in the region. Its edges belong to it, those of its holes too. */
export function pointInRegion(region: Region, p: Point): boolean {
  if (!pointInProfile(region.outer, p)) return false;
  return region.holes.every((hole) => winding(hole, p) === 0 || onEdge(hole, p));
}

function onEdge(profile: Profile, p: Point): boolean {
  return (nearestOn(profile, p)?.distance ?? Number.POSITIVE_INFINITY) <= tolerance.samePoint;
}
