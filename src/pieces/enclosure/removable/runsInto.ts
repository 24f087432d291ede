import { nearestOn } from "../../../geometry/distance.js";
import { inverse, place } from "../../../geometry/frame.js";
import { pointInProfile } from "../../../geometry/inside.js";
import type { Chamber } from "../chambers/divide.js";
import type { Sheet } from "../form/face.js";
import type { Shape } from "../shape.js";
import { cornersOf } from "./corners.js";

/** Less than this a bar touches a board, mm. */
const touches = 0.01;

/**
 * What a bar in a chamber runs into: a brace, or "a wall or a divider" where it reaches out of the chamber's air, into a wall or a
 * divider beyond. None where it has its place.
 */
export function runsInto(bar: Sheet, chamber: Chamber, { fitOut }: Pick<Shape, "fitOut">): string | undefined {
  const corners = cornersOf(bar);
  const { section, from, to, frame } = chamber.air;
  const seen = inverse(frame);
  const isOut = corners.some((corner) => {
    const [x, y, z] = place(seen, corner);
    if (z < from - touches || z > to + touches) return true;
    return !pointInProfile(section, { x, y }) && (nearestOn(section, { x, y })?.distance ?? 0) > touches;
  });
  if (isOut) return "a wall or a divider";
  const brace = fitOut.braces.find(({ chamber: own, board: { sheet } }) => {
    if (own !== chamber) return false;
    const heights = corners.map((corner) => place(inverse(sheet.frame), corner)[2]);
    return Math.max(...heights) > touches - sheet.thickness && Math.min(...heights) < 0 - touches;
  });
  return brace?.board.role;
}
