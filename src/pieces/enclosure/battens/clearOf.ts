import { inverse, place, type Vector } from "../../../geometry/frame.js";
import { edgeLine, offLine, squareTo } from "../chambers/section.js";
import type { Sheet } from "../form/face.js";
import { alongTo, crossing, type Line } from "../form/lines.js";
import { cornersOf } from "../removable/corners.js";

/** Less than this in each other two bars touch, mm. */
const touches = 0.01;

/**
 * A bar cut back at its ends as far as other bars reach into it, each such end square. Its outline runs along its wall,
 * then round its far end, its inner side and its near end. All in one frame that holds the boards.
 */
export function clearOf(bar: Sheet, others: readonly Sheet[]): Sheet {
  return others.reduce(cutBack, bar);
}

function cutBack(bar: Sheet, other: Sheet): Sheet {
  const { outline } = bar;
  const seen = inverse(bar.frame);
  const sides = sidesOf(other).map((side) => side.map((corner) => place(seen, corner)));
  const [line, far, inner, near] = [0, 1, 2, 3].map((i) => edgeLine(outline, i)) as [Line, Line, Line, Line];
  const within = (edge: Line, by: string) => {
    const lean = Math.tan(bar.bevels[by] ?? 0);
    return ([x, y, z]: Vector) => offLine(edge, { x, y }) + z * lean - touches;
  };
  const [byLine, byFar, byInner, byNear] = outline.map(({ by }) => by) as [string, string, string, string];
  // the bar as if it had no ends, and its ends
  const body = [
    ([, , z]: Vector) => -z - touches,
    ([, , z]: Vector) => z + bar.thickness - touches,
    within(line, byLine),
    within(inner, byInner),
  ];
  const meets = clipped(sides, [...body, within(far, byFar), within(near, byNear)]).length > 0;
  if (!meets) return bar;
  const along = (corners: readonly Vector[]) => corners.map(([x, y]) => alongTo(line, { x, y }));
  const reach = along(clipped(sides, body).flat());
  const own = cornersOf(bar).map((corner) => place(seen, corner));
  const middle = (Math.min(...along(own)) + Math.max(...along(own))) / 2;
  const isNear = (Math.min(...reach) + Math.max(...reach)) / 2 < middle;
  const ends = along(own).filter((s) => s < middle === isNear);
  const cut = squareTo(line, isNear ? Math.max(...reach, ...ends) : Math.min(...reach, ...ends));
  const corner = (edge: Line, i: number) => ({ ...outline[i]!, ...crossing(edge, cut) });
  const bevels = Object.entries(bar.bevels).filter(([by]) => by !== (isNear ? byNear : byFar));
  return {
    ...bar,
    outline: isNear
      ? [corner(line, 0), outline[1]!, outline[2]!, corner(inner, 3)]
      : [outline[0]!, corner(line, 1), corner(inner, 2), outline[3]!],
    bevels: Object.fromEntries(bevels),
  };
}

/** The flat sides of a board: its face, its back, and one for each edge. */
function sidesOf(sheet: Sheet): readonly (readonly Vector[])[] {
  const corners = cornersOf(sheet);
  const n = sheet.outline.length;
  const edges = sheet.outline.map((_, i) => {
    const next = (i + 1) % n;
    return [i, next, n + next, n + i].map((k) => corners[k]!);
  });
  return [corners.slice(0, n), corners.slice(n), ...edges];
}

/** What of flat sides lies where all of these are above 0. */
function clipped(
  sides: readonly (readonly Vector[])[],
  above: readonly ((corner: Vector) => number)[],
): readonly (readonly Vector[])[] {
  return sides
    .map((side) => above.reduce<readonly Vector[]>((so, height) => clip(so, height), side))
    .filter((side) => side.length > 0);
}

function clip(side: readonly Vector[], height: (corner: Vector) => number): readonly Vector[] {
  return side.flatMap((a, i): readonly Vector[] => {
    const b = side[(i + 1) % side.length]!;
    const [ha, hb] = [height(a), height(b)];
    const kept = ha > 0 ? [a] : [];
    if (ha > 0 === hb > 0) return kept;
    const t = ha / (ha - hb);
    return [...kept, [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t]];
  });
}
