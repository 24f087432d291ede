import { inverse, place, type Vector } from "../../../geometry/frame.js";
import { pointInProfile } from "../../../geometry/inside.js";
import { centroidOf, extentsOf } from "../../../geometry/measure.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import type { Sheet } from "../form/face.js";
import type { Inside } from "../inside.js";

/** How far along the extrusion, as shares of it, a place is looked for: never twice at the same board. */
const heights = [0.5, 0.37, 0.63, 0.21, 0.79, 0.08, 0.92];
/** Places across the extents of the section, each way. */
const across = 9;

/** A place in the air that lies in none of the boards in it, piece's frame: over the middle of the section if that will do. */
export function clearPoint({ section, from, to, frame }: Inside, boards: readonly Sheet[]): Vector {
  const found = placesIn(section).flatMap(({ x, y }) =>
    heights.map((share) => place(frame, [x, y, from + share * (to - from)])),
  );
  return found.find((point) => !boards.some((sheet) => isIn(sheet, point))) ?? found[0]!;
}

function placesIn(section: Profile): readonly Point[] {
  const { min, max } = extentsOf(section);
  const shares = Array.from({ length: across }, (_, i) => (i + 0.5) / across);
  const spread = shares.flatMap((u) =>
    shares.map((v) => ({ x: min.x + u * (max.x - min.x), y: min.y + v * (max.y - min.y) })),
  );
  const middle = centroidOf(section);
  return [middle, ...spread, middle].filter((point, i, all) => i === all.length - 1 || pointInProfile(section, point));
}

/** Whether a place lies in a board or on it, a little more rather than less. */
function isIn(sheet: Sheet, point: Vector): boolean {
  const [x, y, z] = place(inverse(sheet.frame), point);
  return z < near && z > -sheet.thickness - near && pointInProfile(sheet.outline, { x, y });
}

const near = 0.1;
