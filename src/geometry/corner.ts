import { directionAtEnd, directionAtStart } from "./arc.js";
import type { Point, Profile, Vertex } from "./profile.js";
import { joinedName } from "./rawOffset.js";
import { tolerance } from "./tolerance.js";

/** Which corners of a loop are meant: those that turn right (inside), left (outside), or both. */
export type Which = "inside" | "outside" | "all";

/** A corner that was left as it was, with the size that it does not take. */
export type Refused = { readonly index: number; readonly at: Point; readonly by: string; readonly size: number };

/** A profile with its corners worked, and the corners whose edges are too short for it. */
export type Cornered = { readonly profile: Profile; readonly refused: readonly Refused[] };

/** A size for all corners, or one by the corner's place in the loop; 0 leaves a corner as it is. */
export type Sizes = number | ((index: number, vertex: Vertex) => number);

/** A sharp corner: vertex `index`, the edges before and after it, and its turn, rad, positive to the left. */
export type Corner = {
  readonly index: number;
  readonly before: Vertex;
  readonly at: Vertex;
  readonly after: Vertex;
  readonly turn: number;
  readonly by: string;
};

/** The sharp corners of a loop. */
export function cornersOf(profile: Profile, which: Which = "all"): Corner[] {
  const n = profile.length;
  return profile.flatMap((at, index): Corner[] => {
    const before = profile[(index + n - 1) % n]!;
    const after = profile[(index + 1) % n]!;
    const turn = turnAt(before, at, after);
    const meant = which === "all" || (which === "outside") === turn > 0;
    if (!meant || Math.abs(turn) <= tolerance.smooth) return [];
    return [{ index, before, at, after, turn, by: joinedName(before.by, at.by) }];
  });
}

/** How far the chain turns at `at`, rad, positive to the left. */
export function turnAt(before: Vertex, at: Vertex, after: Point): number {
  const arrive = directionAtEnd(before, at);
  const leave = directionAtStart(at, after);
  return Math.atan2(arrive.x * leave.y - arrive.y * leave.x, arrive.x * leave.x + arrive.y * leave.y);
}

export function sizeAt(sizes: Sizes, corner: Corner): number {
  return typeof sizes === "number" ? sizes : sizes(corner.index, corner.at);
}
