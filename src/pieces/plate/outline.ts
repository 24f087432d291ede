import { arcOf, directionAtEnd, directionAtStart } from "../../geometry/arc.js";
import { fillet } from "../../geometry/corners.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { type Sure, sureOffset } from "../../geometry/sure.js";
import type { Job } from "../../model/job.js";
import { rules } from "../../shop/rules.js";
import { addedAt, type PlateCovering } from "./covering.js";
import type { PlateSpec } from "./schema.js";

/**
 * The plate's outline as cut, before notches: the surveyed outline, side by side cut back by its gap and by the
 * covering that goes over it. Gap as cut = reveal + this edge's covering; the vehicle's side is taken as it was measured.
 *
 * Sides of one outline may be cut back by different amounts, more than a corner's radius. So:
 * 1. the outline's rounded corners are made sharp again, its straight sides carried on till they meet;
 * 2. each side is moved by its own distance;
 * 3. each corner that was round, and each that juts into the space, is rounded so that its arc is tangent to both moved
 *    sides and keeps the smaller of their two distances from the corner as surveyed.
 *
 * Returns: one outline; several, or none, where the space is too narrow for its gaps; or a doubt.
 */
export function plateOutline(spec: PlateSpec, covering: PlateCovering | undefined, job: Job): Sure {
  const { sharp, corners } = sharpened(job.space.outline);
  const back = (side: string) => gapAt(side, spec) + addedAt(side, covering);
  const moved = sureOffset({ outer: sharp, holes: [] }, (by) => -back(by), { corners: "sharp" });
  if (moved.doubt) return moved;
  const value = moved.value.map(({ outer }) => {
    const radii = outer.map((vertex, i) => {
      const before = outer[(i + outer.length - 1) % outer.length]!.by;
      const corner = corners.find((c) => c.before === before && c.after === vertex.by);
      if (corner === undefined) return 0;
      const least = Math.min(back(before), back(vertex.by));
      return Math.max(0, corner.radius + (corner.jutsIn ? least : -least));
    });
    return { outer: fillet(outer, (i) => radii[i] ?? 0).profile, holes: [] };
  });
  return { value };
}

/** The gap one will see at a side, mm. An arc that joins two sides keeps the smaller of their gaps. */
export function gapAt(edge: string, spec: PlateSpec): number {
  return Math.min(...edge.split("|").map((side) => spec.sides?.[side]?.gap ?? spec.gap ?? rules.plateGap.value));
}

/** A corner of the outline between two sides: how round it was, and whether it juts into the space. */
type OutlineCorner = {
  readonly before: string;
  readonly after: string;
  readonly radius: number;
  readonly jutsIn: boolean;
};

/** The outline with its rounded corners (arcs named "a|b") made sharp, and what each corner was. */
function sharpened(outline: Profile): { readonly sharp: Profile; readonly corners: readonly OutlineCorner[] } {
  const n = outline.length;
  const corners: OutlineCorner[] = [];
  const sharp = outline.flatMap((vertex, i) => {
    const before = outline[(i + n - 1) % n]!;
    const next = outline[(i + 1) % n]!;
    if (vertex.by.includes("|")) {
      // Two arcs that use up a side between them leave none to move; the side is there with no length, where they met.
      const at = meeting(vertex, directionAtStart(vertex, next), next, directionAtEnd(vertex, next));
      const [a = "", b = ""] = vertex.by.split("|");
      corners.push({ before: a, after: b, radius: arcOf(vertex, next).radius, jutsIn: vertex.bulge < 0 });
      return [{ ...at, bulge: 0, by: b }];
    }
    // The end of a corner's arc: the corner made sharp stands for it.
    if (before.by.includes("|")) return [];
    const turn = cross(directionAtEnd(before, vertex), directionAtStart(vertex, next));
    corners.push({ before: before.by, after: vertex.by, radius: 0, jutsIn: turn < 0 });
    return [vertex];
  });
  return { sharp, corners };
}

/** Where the line through `a` along `u` meets the line through `b` along `v`. */
function meeting(a: Point, u: Point, b: Point, v: Point): Point {
  const t = cross({ x: b.x - a.x, y: b.y - a.y }, v) / cross(u, v);
  return { x: a.x + u.x * t, y: a.y + u.y * t };
}

function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}
