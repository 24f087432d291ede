import type { Extents, Point } from "../geometry/profile.js";
import type { Bend, Fill, LineKind, Stroke } from "./page.js";

/** Straight lines through the points. */
export function lineThrough(points: readonly Point[], line: LineKind, closed = false): Stroke {
  return { kind: "stroke", path: points.map(straight), closed, line };
}

export function rectangle(box: Extents, line: LineKind): Stroke {
  return lineThrough(cornersOf(box), line, true);
}

/** A full circle, as two half circles. */
export function circle(centre: Point, radius: number, line: LineKind): Stroke {
  return { kind: "stroke", path: circlePath(centre, radius), closed: true, line };
}

/** An arc from `start` through `sweep` to the left, rad. */
export function arc(centre: Point, radius: number, start: number, sweep: number, line: LineKind): Stroke {
  const bulge = Math.tan(sweep / 8);
  const path = [0, 0.5, 1].map((t, index) => ({
    ...polar(centre, radius, start + t * sweep),
    bulge: index < 2 ? bulge : 0,
  }));
  return { kind: "stroke", path, closed: false, line };
}

export function filledBox(box: Extents, grey: number): Fill {
  return { kind: "fill", paths: [cornersOf(box).map(straight)], grey };
}

export function filledCircle(centre: Point, radius: number, grey: number): Fill {
  return { kind: "fill", paths: [circlePath(centre, radius)], grey };
}

/** A filled arrowhead whose tip lies at `tip` and that points along `angle`, after ISO 129-1 (from memory). */
export function arrowHead(tip: Point, angle: number, length = 2.5): Fill {
  const half = length * Math.tan(Math.PI / 18);
  const back = polar(tip, length, angle + Math.PI);
  const left = polar(back, half, angle + Math.PI / 2);
  const right = polar(back, half, angle - Math.PI / 2);
  return { kind: "fill", paths: [[tip, left, right].map(straight)], grey: 0 };
}

/** Two centre lines that cross and stand out `over` a hole's edge. */
export function centreCross(centre: Point, reach: number, line: LineKind = "narrow"): readonly Stroke[] {
  const { x, y } = centre;
  return [
    lineThrough(
      [
        { x: x - reach, y },
        { x: x + reach, y },
      ],
      line,
    ),
    lineThrough(
      [
        { x, y: y - reach },
        { x, y: y + reach },
      ],
      line,
    ),
  ];
}

export function polar(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

export function boxAt(x: number, y: number, width: number, height: number): Extents {
  return { min: { x, y }, max: { x: x + width, y: y + height } };
}

function cornersOf({ min, max }: Extents): readonly Point[] {
  return [min, { x: max.x, y: min.y }, max, { x: min.x, y: max.y }];
}

function circlePath(centre: Point, radius: number): readonly Bend[] {
  return [
    { x: centre.x + radius, y: centre.y, bulge: 1 },
    { x: centre.x - radius, y: centre.y, bulge: 1 },
  ];
}

function straight({ x, y }: Point): Bend {
  return { x, y, bulge: 0 };
}
