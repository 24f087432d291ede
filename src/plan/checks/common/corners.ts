import { directionAtEnd, directionAtStart } from "../../../geometry/arc.js";
import type { Profile, Vertex } from "../../../geometry/profile.js";

/** Less turn than this is a bend, not a corner that breaks off: 30 degrees. */
const leastTurn = Math.PI / 6;

/** The outward corners of an outline, mm. A rounded corner has none. */
export function cornersOfOutline(outline: Profile): readonly Vertex[] {
  return outline.filter((at, i) => {
    const before = outline[(i + outline.length - 1) % outline.length]!;
    const after = outline[(i + 1) % outline.length]!;
    const arriving = directionAtEnd(before, at);
    const leaving = directionAtStart(at, after);
    const turn = Math.atan2(
      arriving.x * leaving.y - arriving.y * leaving.x,
      arriving.x * leaving.x + arriving.y * leaving.y,
    );
    return turn > leastTurn;
  });
}
