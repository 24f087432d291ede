import { extentsOf, isCircle } from "../../geometry/measure.js";
import type { Extents, Point, Profile } from "../../geometry/profile.js";
import type { Feature, Part } from "../../model/part.js";
import type { Callout } from "../callouts.js";
import type { Datum } from "../datum.js";
import { distanceFromEdge } from "../grooveDistance.js";
import type { SeenFrom } from "../view.js";
import { unrelieved } from "./relief.js";
import { cornerPoints } from "./sharpCorners.js";

export type Along = "x" | "y";

/**
 * A place to be marked out along x or y, `value` mm from the datum. `at`: where its extension line begins, part frame;
 * `clear`: how far round that place the line keeps off, mm. `hole`: a hole's middle, which a table could give instead.
 */
export type Mark = {
  readonly along: Along;
  readonly value: number;
  readonly at: Point;
  readonly clear: number;
  readonly hole: boolean;
};

/** Closer than a tenth, two marks read the same. */
const alike = 0.05;

/**
 * Everything on a part that one must measure along x and y, each once: outline corners, openings, recesses and holes.
 * Overall sizes stand outside, holes on a circle by their circle, so neither is here. From the back only what
 * is cut there, as the rest stands on the other page.
 */
export function marksOf(part: Part, callouts: readonly Callout[], datum: Datum, from: SeenFrom): readonly Mark[] {
  const onCircles = new Set(callouts.flatMap((each) => (each.circle ? each.features : [])));
  const extents = extentsOf(part.profile.outer);
  const shape = from === "back" || isCircle(part.profile.outer) ? [] : cornerPoints(unrelieved(part.profile.outer));
  const all = [
    ...shape.flatMap(({ at, x, y }) => markAt(at, datum, { x, y })),
    ...part.features
      .filter((feature) => !onCircles.has(feature) && belongsTo(feature, from))
      .flatMap((feature) => featureMarks(feature, part, datum)),
  ];
  return all.filter((mark) => !isOverall(mark, extents, datum) && Math.abs(mark.value) > alike);
}

/** Cut from this side, or right through; work in the edges belongs to the face. */
export function belongsTo({ side, cut }: Feature, from: SeenFrom): boolean {
  const through = cut.kind === "opening" || (cut.kind === "hole" && cut.depth === "through");
  return side === from || (from === "face" && (through || typeof side === "object"));
}

function featureMarks({ cut, side }: Feature, part: Part, datum: Datum): readonly Mark[] {
  switch (cut.kind) {
    case "opening":
    case "pocket":
      return regionMarks(cut.region.outer, datum);
    case "hole":
      return markAt(cut.at, datum, holeAxes(cut.at, side, part), cut.d / 2, true);
    case "groove":
      if (distanceFromEdge(cut, part) !== undefined) return [];
      return cut.path.flatMap((at) => markAt(at, datum, { x: true, y: true }));
    default:
      return [];
  }
}

function regionMarks(outer: Profile, datum: Datum): readonly Mark[] {
  const round = isCircle(outer);
  if (round) return markAt(round.center, datum, { x: true, y: true }, round.radius);
  return cornerPoints(unrelieved(outer)).flatMap(({ at, x, y }) => markAt(at, datum, { x, y }));
}

/** A hole in an edge is given along that edge. */
function holeAxes(at: Point, side: Feature["side"], part: Part): { readonly x: boolean; readonly y: boolean } {
  if (typeof side === "string") return { x: true, y: true };
  const { min, max } = extentsOf(part.profile.outer);
  const level = Math.abs(at.y - min.y) < alike || Math.abs(at.y - max.y) < alike;
  const upright = Math.abs(at.x - min.x) < alike || Math.abs(at.x - max.x) < alike;
  return { x: !upright, y: !level };
}

function markAt(
  at: Point,
  datum: Datum,
  wanted: { readonly x: boolean; readonly y: boolean },
  clear = 0,
  hole = false,
): readonly Mark[] {
  return (["x", "y"] as const)
    .filter((along) => wanted[along])
    .map((along) => ({ along, value: at[along] - datum.at[along], at, clear, hole }));
}

function isOverall({ along, at }: Mark, { min, max }: Extents, datum: Datum): boolean {
  if (datum.is === "middle") return false;
  return Math.abs(at[along] - max[along]) < alike || Math.abs(at[along] - min[along]) < alike;
}

/** The marks of one lane, each value once, by the place nearest to the lane; in order along it. */
export function distinct(marks: readonly Mark[], distance: (mark: Mark) => number): readonly Mark[] {
  const sorted = [...marks].sort((a, b) => distance(a) - distance(b));
  const kept: Mark[] = [];
  for (const mark of sorted) if (!kept.some((each) => Math.abs(each.value - mark.value) < alike)) kept.push(mark);
  return kept.sort((a, b) => a.at[a.along] - b.at[b.along]);
}
