import { nearestOn } from "../geometry/distance.js";
import type { Path, Point } from "../geometry/profile.js";
import { tessellatePath } from "../geometry/tessellate.js";
import type { Cut, Part } from "../model/part.js";

/** Chords by which a groove's arcs are followed, mm; and how even a distance must be to be given by one number. */
const chord = 0.05;
const evenly = 0.1;

/**
 * How far the middle of a groove runs from the edge it follows, the outer one or by turns that of an opening, mm, where
 * that is the same all along: one number then says where it lies. Otherwise undefined, and its corners are marked out.
 */
export function distanceFromEdge(cut: Extract<Cut, { kind: "groove" }>, part: Part): number | undefined {
  const [first] = cut.path;
  const places = pointsAlong(cut.closed && first ? [...cut.path, first] : cut.path);
  const openings = part.features.flatMap((each) => (each.cut.kind === "opening" ? [each.cut.region.outer] : []));
  const edges = [part.profile.outer, ...openings];
  const away = places.map((place) => edges.map((edge) => nearestOn(edge, place)?.distance ?? 0));
  return away[0]?.find((one) => away.every((each) => each.some((distance) => Math.abs(distance - one) < evenly)));
}

/** Places along a chain: the ends of its edges, and some between. */
function pointsAlong(path: Path): readonly Point[] {
  const corners = tessellatePath(path, chord);
  return corners.flatMap((a, i) => {
    const b = corners[i + 1] ?? a;
    return [0, 0.25, 0.5, 0.75].map((t) => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }));
  });
}
