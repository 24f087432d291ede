import { pointInProfile } from "../../geometry/inside.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { tessellate } from "../../geometry/tessellate.js";
import { tolerance } from "../../geometry/tolerance.js";
import type { NestItem } from "../engine.js";
import { layBlank } from "../placed.js";
import type { Rest } from "./rest.js";

/**
 * The space inside the openings of an item that lies turned: rectangles within them, the item's gap kept all round, from
 * the lower left corner of the item's extents, one kerf added as to every rest. mm, rad.
 */
export function openingsOf(item: NestItem, turn: number, kerf: number): readonly Rest[] {
  const laid = layBlank(item.shape, turn, false);
  const { min } = extentsOf(laid);
  return laid.holes.flatMap((hole): Rest[] => {
    const clear = rectangleIn(hole);
    const w = clear.w - 2 * item.gap + kerf;
    const h = clear.h - 2 * item.gap + kerf;
    if (w <= kerf || h <= kerf) return [];
    return [{ x: clear.x + item.gap - min.x, y: clear.y + item.gap - min.y, w, h }];
  });
}

/** The largest rectangle in a profile that is centred on its extents and has their proportions; of a circle, the square. */
export function rectangleIn(hole: Profile): Rest {
  const { min, max } = extentsOf(hole);
  const centre = { x: (min.x + max.x) / 2, y: (min.y + max.y) / 2 };
  if (!pointInProfile(hole, centre)) return { ...centre, w: 0, h: 0 };
  const half = { x: (max.x - min.x) / 2, y: (max.y - min.y) / 2 };
  const corners = tessellate(hole, tolerance.chord).map((p) => ({
    x: (p.x - centre.x) / half.x,
    y: (p.y - centre.y) / half.y,
  }));
  const reach = Math.min(...corners.map((p, i) => squareDistance(p, corners[(i + 1) % corners.length]!)));
  // an arc that bows into the opening comes nearer than its chords, by no more than the chord error
  const w = Math.max(0, 2 * (half.x * reach - tolerance.chord));
  const h = Math.max(0, 2 * (half.y * reach - tolerance.chord));
  return { x: centre.x - w / 2, y: centre.y - h / 2, w, h };
}

/** Half the side of the largest square about the origin that a line from `a` to `b` leaves clear: it first touches at an
 *  end of the line, where the line crosses a diagonal, or where it crosses an axis. */
function squareDistance(a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const crossings = [-a.x / dx, -a.y / dy, (a.y - a.x) / (dx - dy), -(a.x + a.y) / (dx + dy)];
  const along = [0, 1, ...crossings.filter((t) => t > 0 && t < 1)];
  return Math.min(...along.map((t) => Math.max(Math.abs(a.x + t * dx), Math.abs(a.y + t * dy))));
}
