import { directionAtStart } from "../geometry/arc.js";
import { pointInProfile } from "../geometry/inside.js";
import { edgeLength } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { tessellate } from "../geometry/tessellate.js";
import { tolerance } from "../geometry/tolerance.js";
import { moved, turned } from "../geometry/transform.js";

/**
 * A rectangle of an odd offcut. `length` runs along the true edge, `width` away from it; its corner at x, y of the
 * offcut, turned by `turn`. mm, rad.
 */
export type UsableRectangle = {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly length: number;
  readonly width: number;
};

/** A stretch along the true edge over which nothing is in the way up to some height. */
type Stretch = { readonly from: number; readonly to: number };

/**
 * The largest rectangle of an outline that lies on one of its sides and clear of all `avoid`: what a saw has of an odd
 * offcut, with that side against its fence. Undefined where no straight side has that name.
 *
 * Method: up to a height, what is clear along the side are the stretches that no line reaches into. Between two corners'
 * heights a stretch only narrows, the more the higher (its ends are the outermost of straight lines), so that height by
 * length has one top there. Arcs count as chords within `tolerance.chord`.
 */
export function usableRectangle(
  outline: Profile,
  trueEdge: string,
  avoid: readonly Profile[] = [],
): UsableRectangle | undefined {
  const i = outline.findIndex(({ by, bulge }) => by === trueEdge && bulge === 0);
  if (i < 0) return undefined;
  const start = outline[i]!;
  const end = outline[(i + 1) % outline.length]!;
  const along = directionAtStart(start, end);
  const turn = Math.atan2(along.y, along.x);
  const upright = (loop: Profile) => turned(moved(loop, -start.x, -start.y), -turn);
  const zones = avoid.map(upright);
  const lines = [upright(outline), ...zones].flatMap(linesOf);
  const best = largestOnBase(lines, zones, edgeLength(start, end));
  if (best === undefined) return undefined;
  const { from, to, height } = best;
  return { x: start.x + along.x * from, y: start.y + along.y * from, turn, length: to - from, width: height };
}

/** Two ends: x, y, x, y. */
type Line = readonly [number, number, number, number];

function linesOf(loop: Profile): Line[] {
  const points = tessellate(loop, tolerance.chord);
  return points.map((a, i): Line => {
    const b = points[(i + 1) % points.length]!;
    return [a.x, a.y, b.x, b.y];
  });
}

/** Below this height a line is the base itself, mm. */
const hair = 1e-6;

function largestOnBase(
  lines: readonly Line[],
  zones: readonly Profile[],
  base: number,
): (Stretch & { readonly height: number }) | undefined {
  const above = lines.filter(([, y0, , y1]) => Math.max(y0, y1) > hair);
  const heights = [...new Set([hair, ...above.flatMap(([, y0, , y1]) => [y0, y1])])]
    .filter((y) => y >= hair)
    .sort((a, b) => a - b);
  let best: (Stretch & { readonly height: number }) | undefined;
  // even at its lowest a stretch is no longer than there: the most promising first, most of the others need no look then
  const promising = heights.slice(1).flatMap((high, k): Promising[] => {
    const low = heights[k]!;
    return clearStretches(above, zones, base, low + hair / 2).map((wide) => ({
      wide,
      low,
      high,
      most: sizeOf(wide, high),
    }));
  });
  for (const { wide, low, high, most } of promising.sort((a, b) => b.most - a.most)) {
    if (best !== undefined && most <= sizeOf(best, best.height)) break;
    const at = (height: number) =>
      clearStretches(above, zones, base, height).find(({ from, to }) => from >= wide.from && to <= wide.to);
    const sizeAt = (height: number) => {
      const stretch = at(height);
      return stretch === undefined ? 0 : sizeOf(stretch, height);
    };
    const height = topOf(sizeAt, low, high);
    const stretch = at(height);
    if (stretch === undefined) continue;
    if (best === undefined || sizeOf(stretch, height) > sizeOf(best, best.height) + hair) best = { ...stretch, height };
  }
  return best;
}

/** A stretch as it is between two heights, and the most that it can be worth there. */
type Promising = { readonly wide: Stretch; readonly low: number; readonly high: number; readonly most: number };

const sizeOf = ({ from, to }: Stretch, height: number): number => (to - from) * height;

/** Where a function with one top between two places has it, to a millionth of a millimetre. */
function topOf(f: (at: number) => number, low: number, high: number): number {
  let [from, to] = [low, high];
  while (to - from > hair) {
    const third = (to - from) / 3;
    if (f(from + third) < f(to - third)) from += third;
    else to -= third;
  }
  return f(high) >= f(from) ? high : from;
}

/** Along the base, what no line reaches into between it and a height, and no zone covers. */
function clearStretches(
  lines: readonly Line[],
  zones: readonly Profile[],
  base: number,
  height: number,
): readonly Stretch[] {
  const reached = lines
    .filter(([, y0, , y1]) => Math.min(y0, y1) < height)
    .map((line) => shadowOf(line, height))
    .sort((a, b) => a.from - b.from);
  const stretches: Stretch[] = [];
  let from = 0;
  for (const shadow of [...reached, { from: base, to: base }]) {
    if (shadow.from > from) stretches.push({ from, to: Math.min(shadow.from, base) });
    from = Math.max(from, shadow.to);
  }
  const middle = (stretch: Stretch) => ({ x: (stretch.from + stretch.to) / 2, y: height / 2 });
  return stretches.filter(
    (stretch) => stretch.to - stretch.from > hair && !zones.some((zone) => pointInProfile(zone, middle(stretch))),
  );
}

/** What a line covers of the base with its part between the base and a height. */
function shadowOf([x0, y0, x1, y1]: Line, height: number): Stretch {
  const at = (x: number, y: number) => {
    const within = Math.max(0, Math.min(height, y));
    return within === y ? x : x0 + ((x1 - x0) * (within - y0)) / (y1 - y0);
  };
  const [a, b] = [at(x0, y0), at(x1, y1)];
  return { from: Math.min(a, b), to: Math.max(a, b) };
}
