import { directionAtEnd, directionAtStart } from "./arc.js";
import { nearestOn } from "./distance.js";
import { pointInProfile } from "./inside.js";
import type { Extents, Point, Profile } from "./profile.js";
import { tolerance } from "./tolerance.js";

/** Every place inside an outline that bows nowhere inwards: then all between them is inside too. */
export function surelyWithin(places: readonly Point[], outline: Profile): boolean {
  return bowsOutOnly(outline) && places.every((place) => pointInProfile(outline, place));
}

function bowsOutOnly(outline: Profile): boolean {
  return outline.every((b, i) => {
    const arriving = directionAtEnd(outline[(i + outline.length - 1) % outline.length]!, b);
    const leaving = directionAtStart(b, outline[(i + 1) % outline.length]!);
    return b.bulge >= 0 && arriving.x * leaving.y - arriving.y * leaving.x >= -tolerance.smooth;
  });
}

/** Which side of an outline a piece lies beyond, and how far: by the corners of its extents, so never too little. mm. */
export function beyondOutline({ min, max }: Extents, outline: Profile): { side: string; out: number } | undefined {
  const corners: readonly Point[] = [min, { x: max.x, y: min.y }, max, { x: min.x, y: max.y }];
  const far = corners
    .filter((corner) => !pointInProfile(outline, corner))
    .flatMap((corner) => nearestOn(outline, corner) ?? [])
    .sort((a, b) => b.distance - a.distance)[0];
  return far && { side: far.by, out: far.distance };
}
