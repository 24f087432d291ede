import { inverse, place, turn } from "../../../geometry/frame.js";
import { areaOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { leftPart } from "../chambers/section.js";
import type { Sheet } from "../form/face.js";
import type { Line } from "../form/lines.js";

/** A piece of batten shorter than this is left out, mm. */
const shortest = 20;

/**
 * What a board that stands across a strip leaves of it, on either side of that board: its cut ends lean as the board
 * does. `along`: the wall that the strip is glued to; `across`: the board.
 */
export function partedBy(strip: Sheet, along: string, across: Sheet, name: string): readonly Sheet[] {
  const seen = inverse(strip.frame);
  const normal = turn(seen.quat, turn(across.frame.quat, [0, 0, 1]));
  const flat = Math.hypot(normal[0], normal[1]);
  // it lies along the strip's own face
  if (flat < 1e-9) return [strip];
  const [nx, ny] = [normal[0] / flat, normal[1] / flat];
  const sides = [0, -across.thickness].map((z, i) => {
    const [x, y, height] = place(seen, place(across.frame, [0, 0, z]));
    // where that side of the board crosses the strip's face
    const off = nx * x + ny * y + (normal[2] / flat) * height;
    const way = i === 0 ? 1 : -1;
    const line: Line = { at: { x: nx * off, y: ny * off }, along: { x: ny * way, y: 0 - nx * way } };
    return { line, bevel: way * Math.atan(normal[2] / flat) };
  });
  const pieces = sides.flatMap(({ line, bevel }): readonly Sheet[] => {
    const outline = leftPart(strip.outline, line, name);
    if (outline.length < 3 || areaOf(outline) <= 0) return [];
    const isCut = outline.some(({ by }) => by === name);
    return [{ ...strip, outline, bevels: { ...strip.bevels, ...(isCut && bevel !== 0 ? { [name]: bevel } : {}) } }];
  });
  // where the board runs along the strip, what is cut off from the wall has nothing to be glued to
  return pieces.filter(({ outline }) => outline.some(({ by }) => by === along) && longest(outline) >= shortest);
}

const longest = (outline: Profile): number =>
  Math.max(
    ...outline.map((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      return Math.hypot(b.x - a.x, b.y - a.y);
    }),
  );
