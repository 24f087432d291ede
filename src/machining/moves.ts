import type { Point } from "../geometry/profile.js";
import type { Move, MoveRole } from "../model/program.js";

/** How fast a bit goes, mm/min: cutting sideways, straight down, and in the air below safe height. */
export type Pace = { readonly feed: number; readonly plunge: number; readonly air: number };

/** Above the sheet, where a bit that comes down at air speed slows down, mm: common practice, no source. */
export const slowFrom = 1;

/** A move in a straight line. */
export function line(to: Point, z: number, feed: Move["feed"], role: MoveRole): Move {
  return { to: [to.x, to.y, z], bulge: 0, feed, role };
}

/** An arc in plan, or a line where the bulge is 0. */
export function bow(to: Point, z: number, bulge: number, feed: Move["feed"], role: MoveRole): Move {
  return { to: [to.x, to.y, z], bulge, feed, role };
}

/** At safe height to above a place, then down to `z` in the air: at air speed where that lies below the sheet's top. */
export function approach(to: Point, z: number, safe: number, pace: Pace): readonly Move[] {
  const above = line(to, safe, "rapid", "way");
  if (z >= slowFrom) return [above, line(to, z, "rapid", "way")];
  return [above, line(to, slowFrom, "rapid", "way"), line(to, z, pace.air, "way")];
}

/** Straight up from a place to safe height. */
export function rise(at: Point, safe: number): Move {
  return line(at, safe, "rapid", "way");
}

/** Where a chain of moves ends. */
export function endOf(moves: readonly Move[]): Point {
  const [x, y] = moves[moves.length - 1]!.to;
  return { x, y };
}
