import { nearestOn } from "./distance.js";
import { pointInProfile } from "./inside.js";
import { centroidOf, extentsOf } from "./measure.js";
import type { Point, Profile } from "./profile.js";

/** Places looked at across the extents, each way: odd, so that the middle is one of them. */
const across = 9;

/**
 * A place well inside a profile, where its centroid may lie outside: the farthest from its edges of a grid.
 *
 * Returns: its centroid where no place of the grid lies inside, as in a shape thinner than a ninth of its extents askew.
 */
export function deepPlace(profile: Profile): Point {
  const { min, max } = extentsOf(profile);
  const shares = Array.from({ length: across }, (_, i) => (i + 0.5) / across);
  const grid = shares.flatMap((u) =>
    shares.map((v) => ({ x: min.x + u * (max.x - min.x), y: min.y + v * (max.y - min.y) })),
  );
  const depths = grid
    .filter((place) => pointInProfile(profile, place))
    .map((place) => ({ place, depth: nearestOn(profile, place)?.distance ?? 0 }));
  return depths.toSorted((a, b) => b.depth - a.depth)[0]?.place ?? centroidOf(profile);
}
