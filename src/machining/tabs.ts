import { arcOf, isFlat } from "../geometry/arc.js";
import { turnAt } from "../geometry/corner.js";
import { extentsOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { tolerance } from "../geometry/tolerance.js";
import type { Kept } from "./ramp.js";
import type { Track, TrackEdge } from "./track.js";

/** Sizes of tabs, mm: common practice, no source. */
export const tabRule = {
  /** Left standing at the narrowest: twice the bit, or, where there is no room for that, this. */
  least: 8,
  /** Heights, by the board: a sixth of it between these. */
  low: 1.5,
  high: 3,
  share: 1 / 6,
  /** From one to the next along the path. */
  spacing: 300,
  /** A part has this many; a small one, this long and wide, fewer. */
  count: 3,
  smallCount: 2,
  small: 100,
  /** None on an arc of a smaller radius: it would be hard to trim. */
  arc: 25,
} as const;

/** How high a tab stands in a board of this thickness, mm. */
export function tabHeight(thickness: number): number {
  return Math.min(tabRule.high, Math.max(tabRule.low, thickness * tabRule.share));
}

/** Whether a part, or what drops out of an opening, counts as small. */
export function isSmall(loop: Profile): boolean {
  const { min, max } = extentsOf(loop);
  return max.x - min.x < tabRule.small && max.y - min.y < tabRule.small;
}

/** Whether a tab may stand on an edge of the path, beside the edge of the part that it was moved from. */
export type MayStand = (edge: TrackEdge) => boolean;

/**
 * The stretches of a closed path over which the bit is lifted, so that what is left standing is at its narrowest twice
 * the bit, or 8 mm: the bit's own width is added, since it cuts half of that from both ends. At least `count` of them,
 * no farther from each other than the spacing where the edges between allow it; none at a corner, none where `isFree` says
 * no.
 *
 * Returns: undefined where there is no room.
 */
export function placeTabs(
  track: Track,
  d: number,
  count: number,
  mayStand: MayStand,
  isFree: (kept: Kept) => boolean = () => true,
): readonly Kept[] | undefined {
  const runs = runsOf(track, mayStand);
  for (const width of [2 * d, tabRule.least]) {
    const stretch = Math.max(width, tabRule.least) + d;
    const about = (s: number): Kept => ({ from: s - stretch / 2, to: s + stretch / 2 });
    const middles = spread(runs, stretch, count, track.length, (s) => isFree(about(s)));
    if (middles.length >= count) {
      return thinned(middles, count, track.length).map(about);
    }
  }
  return undefined;
}

/** A stretch of the path on which tabs may stand. `round`: the whole path, smooth all the way. */
type FreeRun = { readonly from: number; readonly to: number; readonly round: boolean };

/** The smooth runs of edges that may bear a tab. */
function runsOf(track: Track, mayStand: MayStand): readonly FreeRun[] {
  const n = track.edges.length;
  const stands = track.edges.map(mayStand);
  const joined = track.edges.map(
    (edge, i) => stands[i]! && stands[(i + 1) % n]! && isSmooth(edge, track.edges[(i + 1) % n]!),
  );
  if (joined.every(Boolean)) return [{ from: 0, to: track.length, round: true }];
  const first = joined.findIndex((is) => !is) + 1;
  const runs: FreeRun[] = [];
  let from: number | undefined;
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    const begin = track.at[i]! + (first + k >= n ? track.length : 0);
    if (stands[i] && from === undefined) from = begin;
    if (from !== undefined && !joined[i]) {
      runs.push({ from, to: begin + track.edges[i]!.length, round: false });
      from = undefined;
    }
  }
  return runs;
}

function isSmooth(one: TrackEdge, next: TrackEdge): boolean {
  return Math.abs(turnAt(one.a, next.a, next.b)) < 1000 * tolerance.smooth;
}

/** Middles of tabs, evenly within each run: as many as the spacing asks, more where the count is not reached. */
function spread(
  runs: readonly FreeRun[],
  stretch: number,
  count: number,
  length: number,
  isFree: (s: number) => boolean,
): readonly number[] {
  const usable = runs.filter((run) => run.to - run.from >= stretch);
  const room = usable.map((run) => Math.floor((run.to - run.from) / (1.5 * stretch)) || 1);
  const wanted = usable.map((run, i) =>
    Math.min(room[i]!, Math.max(1, Math.ceil((run.to - run.from) / tabRule.spacing))),
  );
  for (;;) {
    const middles = usable.flatMap((run, i) => middlesOn(run, wanted[i]!, stretch, isFree)).map((s) => s % length);
    const sparse = usable
      .map((run, i) => ({ i, each: (run.to - run.from) / wanted[i]! }))
      .filter(({ i }) => wanted[i]! < room[i]!)
      .sort((a, b) => b.each - a.each || a.i - b.i)[0];
    if (middles.length >= count || sparse === undefined) return middles.sort((a, b) => a - b);
    wanted[sparse.i]!++;
  }
}

const shift = 12; // mm from one place that is tried to the next

/** Evenly along a run, each moved to the nearest free place in its own share of it. */
function middlesOn(run: FreeRun, count: number, stretch: number, isFree: (s: number) => boolean): readonly number[] {
  const share = (run.to - run.from) / count;
  return Array.from({ length: count }, (_, k) => run.from + (k + 0.5) * share).flatMap((middle) => {
    const steps = Math.floor((share - stretch) / 2 / shift + 1e-9);
    for (let i = 0; i <= steps; i++) {
      const found = [middle + i * shift, middle - i * shift].find(isFree);
      if (found !== undefined) return [found];
    }
    return [];
  });
}

/** As few as keep the count and the spacing: the tab whose loss leaves the least gap goes first. */
function thinned(middles: readonly number[], count: number, length: number): readonly number[] {
  let left = middles;
  while (left.length > count) {
    const gaps = left.map((_, i) => gapWithout(left, i, length));
    const least = gaps.reduce((best, gap, i) => (gap < gaps[best]! - 1e-9 ? i : best), 0);
    if (gaps[least]! > tabRule.spacing) break;
    left = left.filter((_, i) => i !== least);
  }
  return left;
}

/** From the tab before to the tab after the one left out. */
function gapWithout(middles: readonly number[], i: number, length: number): number {
  const n = middles.length;
  const gap = middles[(i + 1) % n]! - middles[(i + n - 1) % n]!;
  return gap > 0 ? gap : gap + length;
}

/** Radius of the part's own edge beside an edge of the path; endless where straight. `away`: how far the path lies from
 *  it on the outside of the curve's turn to the left, mm. */
export function partRadius({ a, b }: TrackEdge, away: number): number {
  if (isFlat(a, b)) return Number.POSITIVE_INFINITY;
  const { radius } = arcOf(a, b);
  return a.bulge > 0 ? radius - away : radius + away;
}
