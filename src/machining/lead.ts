import { midpoint } from "../geometry/arc.js";
import { nearestOn } from "../geometry/distance.js";
import type { Point, Profile } from "../geometry/profile.js";
import { headingAt, placeAt, type Track } from "./track.js";

/** On which side of the way the waste lies. */
export type WasteSide = "left" | "right";

/** Quarter arcs that touch the path: from `from` on to it, from it away to `to`; `bulge` is that of both. */
export type Leads = { readonly from: Point; readonly to: (end: number) => Point | undefined; readonly bulge: number };

const quarter = Math.tan(Math.PI / 8);

/**
 * Leads on the waste side of a track, which the bit joins at length `start`; undefined where there is no room. `clear`:
 * the loops that the bit's edge may not cross.
 */
export function leadsOn(
  track: Track,
  start: number,
  side: WasteSide,
  size: number,
  radius: number,
  clear: readonly Profile[],
): Leads | undefined {
  const bulge = side === "left" ? quarter : -quarter;
  const isClear = (from: Point, to: Point) =>
    [from, midpoint({ ...from, bulge, by: "" }, to)].every((p) => isOff(p, radius, clear));
  const on = placeAt(track, start);
  const from = beside(track, start, side, -size, size);
  if (!isClear(from, on)) return undefined;
  const to = (end: number) => {
    const place = beside(track, end, side, size, size);
    return isClear(place, placeAt(track, end)) ? place : undefined;
  };
  return { from, to, bulge };
}

/** Noise of offsets, mm, and what a bit that goes into a slot of its own width may come nearer. */
const hair = 1e-3;

function isOff(p: Point, radius: number, loops: readonly Profile[]): boolean {
  return loops.every((loop) => (nearestOn(loop, p)?.distance ?? Number.POSITIVE_INFINITY) >= radius - hair);
}

/** `forward` along the track's heading and `out` to the side. */
function beside(track: Track, s: number, side: WasteSide, forward: number, out: number): Point {
  const at = placeAt(track, s);
  const t = headingAt(track, s);
  const n = side === "left" ? { x: -t.y, y: t.x } : { x: t.y, y: -t.x };
  return { x: at.x + t.x * forward + n.x * out, y: at.y + t.y * forward + n.y * out };
}
