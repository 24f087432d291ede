import type { Bend } from "../../drawing/page.js";
import { arcOf } from "../../geometry/arc.js";
import type { Point } from "../../geometry/profile.js";

/** A cubic Bezier curve from where the pen stands: two control points and an end. */
export type Curve = readonly [Point, Point, Point];

/** No curve turns further than this, rad: then it stands off its circle by less than 5e-6 of the radius (computed). */
const mostTurn = Math.PI / 4;

/**
 * The edge that leaves `from` as curves; none for a straight one. Control points lie 4/3 tan(sweep / 4) radii along the
 * tangents (the usual formula, own check: the middle of the curve lies on the circle).
 */
export function curvesOf(from: Bend, to: Point): readonly Curve[] {
  if (from.bulge === 0) return [];
  const { center, radius, start, sweep } = arcOf({ ...from, by: "" }, to);
  const count = Math.ceil(Math.abs(sweep) / mostTurn - 1e-9);
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: count }, (_, i): Curve => {
    const [a, b] = [unit(start + i * step), unit(start + (i + 1) * step)];
    const end = i === count - 1 ? { x: to.x, y: to.y } : along(center, b, radius);
    return [
      { x: center.x + radius * (a.x - reach * a.y), y: center.y + radius * (a.y + reach * a.x) },
      { x: center.x + radius * (b.x + reach * b.y), y: center.y + radius * (b.y - reach * b.x) },
      end,
    ];
  });
}

function unit(angle: number): Point {
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

function along(from: Point, direction: Point, distance: number): Point {
  return { x: from.x + distance * direction.x, y: from.y + distance * direction.y };
}
