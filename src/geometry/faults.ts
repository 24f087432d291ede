import { difference } from "./boolean.js";
import { selfCrossing } from "./crossing.js";
import { areaOf, eachEdge, lengthOf } from "./measure.js";
import type { Point, Profile, Region } from "./profile.js";
import { samePoint, tolerance } from "./tolerance.js";

/** What can be wrong with a profile or region that somebody drew, and where. */
export type Fault = {
  readonly kind:
    | "not-a-number"
    | "too-few-vertices"
    | "repeated-point"
    | "no-area"
    | "clockwise"
    | "crosses-itself"
    | "hole-outside";
  readonly at: Point;
};

/** Every fault of a closed profile, with the place; none where it can be built on. */
export function profileFaults(profile: Profile): Fault[] {
  const first = profile[0];
  if (first === undefined) return [{ kind: "too-few-vertices", at: { x: 0, y: 0 } }];
  const odd = profile.find((v) => ![v.x, v.y, v.bulge].every(Number.isFinite));
  if (odd !== undefined) return [{ kind: "not-a-number", at: placeOf(odd) }];
  if (profile.length < 2) return [{ kind: "too-few-vertices", at: placeOf(first) }];
  const area = areaOf(profile);
  const crossing = selfCrossing(profile);
  const faults: Fault[] = repeatedPoints(profile);
  if (crossing !== undefined) faults.push({ kind: "crosses-itself", at: crossing });
  else if (Math.abs(area) <= tolerance.samePoint * lengthOf(profile))
    faults.push({ kind: "no-area", at: placeOf(first) });
  else if (area < 0) faults.push({ kind: "clockwise", at: placeOf(first) });
  return faults;
}

/** Every fault of its loops, and holes that reach out of the outer. */
export function regionFaults(region: Region): Fault[] {
  const faults = [region.outer, ...region.holes].flatMap(profileFaults);
  if (faults.length > 0) return faults;
  return region.holes.flatMap((hole): Fault[] => {
    const [out] = difference({ outer: hole, holes: [] }, [{ outer: region.outer, holes: [] }]);
    return out === undefined ? [] : [{ kind: "hole-outside", at: placeOf(out.outer[0]!) }];
  });
}

function repeatedPoints(profile: Profile): Fault[] {
  const faults: Fault[] = [];
  eachEdge(profile, (a, b) => {
    if (samePoint(a, b)) faults.push({ kind: "repeated-point", at: placeOf(a) });
  });
  return faults;
}

function placeOf(p: Point): Point {
  return { x: p.x, y: p.y };
}
