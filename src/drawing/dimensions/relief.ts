import { arcOf, midpoint } from "../../geometry/arc.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { tolerance } from "../../geometry/tolerance.js";
import { meetingOf } from "./sharpCorners.js";

/** A round bite into a corner, so that something square seats in it: an arc through the sharp corner itself. */
export type Relief = { readonly corner: Point; readonly middle: Point; readonly radius: number };

/** Every relieved corner of an outline. */
export function reliefsOf(profile: Profile): readonly Relief[] {
  return profile.flatMap((_, i) => reliefAt(profile, i) ?? []);
}

/** The outline with its relieved corners sharp: what one marks out, and what seats in it. */
export function unrelieved(profile: Profile): Profile {
  const reliefs = profile.map((_, i) => reliefAt(profile, i));
  return profile.flatMap((vertex, i) => {
    const relief = reliefs[i];
    if (relief) return [{ ...profile[(i + 1) % profile.length]!, ...relief.corner }];
    return reliefs.at(i - 1) ? [] : [vertex];
  });
}

/** The arc from vertex `i` on, if it is a bite: between straight edges, through the place where they would meet. */
function reliefAt(profile: Profile, i: number): Relief | undefined {
  const at = (step: number) => profile[(i + step + profile.length) % profile.length]!;
  const [from, to] = [at(0), at(1)];
  if (profile.length < 5 || from.bulge === 0 || at(-1).bulge !== 0 || to.bulge !== 0) return undefined;
  const corner = meetingOf({ from: at(-1), to: from }, { from: to, to: at(2) });
  if (corner === undefined) return undefined;
  const { center, radius } = arcOf(from, to);
  const off = Math.hypot(corner.x - center.x, corner.y - center.y) - radius;
  return Math.abs(off) < tolerance.samePoint ? { corner, middle: midpoint(from, to), radius } : undefined;
}
