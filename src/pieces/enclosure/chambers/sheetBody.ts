import { inverse, place, type Vector } from "../../../geometry/frame.js";
import type { Sheet } from "../form/face.js";
import { cornersOf } from "../removable/corners.js";
import { edgeLine, offLine } from "./section.js";

/** Corners of a flat thing that bows out, one after the other. */
export type Side = readonly Vector[];
/** How far a place lies on the board's side of one of its planes, mm. */
export type Depth = (place: Vector) => number;

/** Boards that run less than this into each other touch, mm. */
const touches = 0.01;

/** The flat sides of a board, its face, its back, and one for each edge, seen in the frame of another. */
export function sidesOf(sheet: Sheet, { frame }: Sheet): readonly Side[] {
  const seen = inverse(frame);
  const corners = cornersOf(sheet).map((corner) => place(seen, corner));
  const n = sheet.outline.length;
  const edges = sheet.outline.map((_, i) => {
    const next = (i + 1) % n;
    return [i, next, n + next, n + i].map((k) => corners[k]!);
  });
  return [corners.slice(0, n), corners.slice(n), ...edges];
}

/** How deep a place lies behind a board's face and before its back, in its own frame. */
export const betweenFaces = ({ thickness }: Sheet): readonly Depth[] => [
  ([, , z]) => -z - touches,
  ([, , z]) => z + thickness - touches,
];

/** How far inside the plane of an edge, bevel and all. */
export function insideEdge({ outline, bevels }: Sheet, i: number): Depth {
  const line = edgeLine(outline, i);
  const lean = Math.tan(bevels[outline[i]!.by] ?? 0);
  return ([x, y, z]) => offLine(line, { x, y }) + z * lean - touches;
}

/** What of flat sides lies inside all of these planes. */
export function clipped(sides: readonly Side[], within: readonly Depth[]): readonly Side[] {
  return sides.map((side) => within.reduce(clip, side)).filter((side) => side.length > 0);
}

function clip(side: Side, depth: Depth): Side {
  return side.flatMap((a, i): Side => {
    const b = side[(i + 1) % side.length]!;
    const [deepA, deepB] = [depth(a), depth(b)];
    const kept = deepA > 0 ? [a] : [];
    if (deepA > 0 === deepB > 0) return kept;
    const t = deepA / (deepA - deepB);
    return [...kept, [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]];
  });
}

/** Whether two boards that bow out, windows and all, run into each other. */
export function sheetsMeet(one: Sheet, other: Sheet): boolean {
  const reachesInto = (a: Sheet, b: Sheet) =>
    clipped(sidesOf(a, b), [...betweenFaces(b), ...b.outline.map((_, i) => insideEdge(b, i))]).length > 0;
  return reachesInto(one, other) || reachesInto(other, one);
}
