import type { Bend } from "../../drawing/page.js";
import { radiusOf } from "../../geometry/arc.js";
import type { Point } from "../../geometry/profile.js";
import { millimetres } from "./svgDocument.js";

/**
 * A chain of lines and arcs as SVG path data; arcs are A commands. `at` carries a place to the picture, where y grows
 * downward: so an arc that turns left here is one of sweep flag 0 there (SVG 2, 9.3.8, from memory).
 */
export function pathData(path: readonly Bend[], closed: boolean, at: (p: Point) => Point): string {
  const [first] = path;
  if (first === undefined) return "";
  const steps = path.slice(0, closed ? undefined : -1).map((from, i) => stepTo(from, path[(i + 1) % path.length]!, at));
  return [`M${placed(at(first))}`, ...steps, ...(closed ? ["Z"] : [])].join("");
}

function stepTo(from: Bend, to: Point, at: (p: Point) => Point): string {
  const end = placed(at(to));
  if (from.bulge === 0) return `L${end}`;
  const radius = millimetres(radiusOf(Math.hypot(to.x - from.x, to.y - from.y), from.bulge));
  const large = Math.abs(from.bulge) > 1 ? 1 : 0;
  return `A${radius} ${radius} 0 ${large} ${from.bulge > 0 ? 0 : 1} ${end}`;
}

function placed({ x, y }: Point): string {
  return `${millimetres(x)} ${millimetres(y)}`;
}
