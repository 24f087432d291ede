import { isFlat } from "../geometry/arc.js";
import { cornersOf } from "../geometry/corner.js";
import { compose, frameFromAxes } from "../geometry/frame.js";
import { eachEdge } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { polygon } from "../geometry/shapes.js";
import type { SolidKernel, SolidRef } from "../geometry/solids.js";
import { sureOffset } from "../geometry/sure.js";
import { onceFor } from "../model/once.js";
import type { Part } from "../model/part.js";
import type { Standing } from "./standing.js";

/** Whether the back of a part is smaller or larger than its face. */
export const isBevelled = (part: Part): boolean => Object.values(part.edges).some((edge) => edge.bevel !== 0);

/** What holds both faces of a part before its bevels are sawn: the face's outline, or the blank where the back is larger. */
export const squareOutline = (part: Part): Profile => (isBevelled(part) ? part.blank.outer : part.profile.outer);

/** The outlines of a part's face and back, as one measures them in the plane of each. */
export const facesOf = onceFor((part: Part): readonly [Profile, Profile] => {
  const { outer } = part.profile;
  if (!isBevelled(part)) return [outer, outer];
  const shrinks = (by: string) => -part.thickness * Math.tan(part.edges[by]?.bevel ?? 0);
  // in doubt, what surely holds it
  const back = sureOffset({ outer, holes: [] }, shrinks, { corners: "sharp" });
  return [outer, back.value?.[0]?.outer ?? part.blank.outer];
});

const over = 1; // mm of nothing beyond the board, so that no two faces lie in one plane

/**
 * The wedges that the tilted blade takes off, one along each straight bevelled edge of the face. At corners that jut out
 * they run on as far as a larger back reaches beyond the face, and a little farther: where a wedge ended in the plane of
 * the board's side, the kernel left a flap of no volume beyond a quarter of all sawn planes, which still overlapped.
 */
export function bevelWedges(kernel: SolidKernel, { part, at }: Standing): readonly SolidRef[] {
  const { outer } = part.profile;
  const reach = Object.values(part.edges).reduce(
    (most, edge) => Math.max(most, -part.thickness * Math.tan(edge.bevel)),
    0,
  );
  const jutting = new Set(cornersOf(outer, "outside").map((corner) => corner.index));
  const wedges: SolidRef[] = [];
  eachEdge(outer, (a, b, i) => {
    const bevel = part.edges[a.by]?.bevel ?? 0;
    if (bevel === 0 || !isFlat(a, b)) return;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    const before = jutting.has(i) ? reach + over : 0;
    const after = jutting.has((i + 1) % outer.length) ? reach + over : 0;
    // x' runs out of the board, y' up, so that z' runs back along the edge and the wedge is extruded onward
    const frame = frameFromAxes([a.x - ux * before, a.y - uy * before, 0], [uy, -ux, 0], [0, 0, 1]);
    const section = polygon(wedgeSection(part.thickness, bevel), "bevel");
    wedges.push(kernel.extrude({ outer: section, holes: [] }, before + length + after, compose(at, frame)));
  });
  return wedges;
}

/** Seen along the edge: x' from the edge of the face outwards, y' from the face upwards. The sawn plane runs through 0, 0. */
function wedgeSection(thickness: number, bevel: number) {
  const slope = Math.tan(bevel);
  const out = over + Math.max(0, -slope * thickness);
  return [
    { x: slope * over, y: over },
    { x: -slope * (thickness + over), y: -thickness - over },
    { x: out + Math.abs(slope) * over, y: -thickness - over },
    { x: out + Math.abs(slope) * over, y: over },
  ];
}
