import { nearestOnEdge } from "../geometry/distance.js";
import { extentsOf } from "../geometry/measure.js";
import type { Extents, Point } from "../geometry/profile.js";
import type { Bench } from "./bench.js";
import type { Kept } from "./ramp.js";
import { placeTabs } from "./tabs.js";
import { edgeAt, placeAt, shareOf } from "./track.js";
import type { Way } from "./ways.js";

/** How what a way cuts free is held: by tabs, by a skin all round, or not at all, since all of it is cleared away;
 *  `kept`: the stretches over which the bit is lifted all the same. */
export type Hold = { readonly by: "tabs" | "skin" | "nothing"; readonly kept: readonly Kept[] };

/** The middle of a tab along its way, in places no farther apart than a bit does not slip between, and half the bit. */
type Core = { readonly places: readonly Point[]; readonly radius: number; readonly box: Extents };

type Sheet = { readonly length: number; readonly width: number };

/** A way with the rectangle round it. */
type Boxed = { readonly way: Way; readonly box: Extents };

/**
 * How everything on a sheet is held while it is cut. Parts lie so close that the ways round two of them overlap: a tab of
 * the one would be cut away by the other. So every way is lifted over every tab that it passes, and no tab stands where a
 * way would have to be lifted that must not be, or where the cut leaves nothing of the sheet's edge to hold on to.
 *
 * Returns: one hold for each way, in their order.
 */
export function holdAll(bench: Bench, sheet: Sheet, ways: readonly Way[]): readonly Hold[] {
  const boxed = ways.map((way): Boxed => ({ way, box: extentsOf(way.loop) }));
  const bySkin = bench.cnc.hold === "skin";
  const tabs = ways.map((way) => (way.dropped && !bySkin ? tabsOn(sheet, way, boxed) : []));
  const cores = tabs.flatMap((own, i) => (own ?? []).map((kept) => coreOf(ways[i]!, kept)));
  return boxed.map(({ way, box }, i): Hold => {
    const near = cores.filter((core) => isNear(core, box, way.tool.radius));
    const kept = near.flatMap((core) => stretchesPast(way, core));
    if (bySkin && way.dropped) return { by: "skin", kept };
    if (tabs[i] !== undefined) return { by: way.dropped ? "tabs" : "nothing", kept };
    return { by: way.kind === "outside" ? "skin" : "nothing", kept };
  });
}

function tabsOn(sheet: Sheet, way: Way, all: readonly Boxed[]): readonly Kept[] | undefined {
  return placeTabs(way.track, way.tool.d, way.count, way.mayStand, (kept) => {
    const core = coreOf(way, kept);
    if (way.kind === "outside" && !hasWaste(sheet, core)) return false;
    return all.every(
      ({ way: other, box }) =>
        !isNear(core, box, other.tool.radius) ||
        stretchesPast(other, core).every((stretch) => standsOnly(other, stretch)),
    );
  });
}

/** A tab holds only where a strip of the sheet is left beyond the cut, this wide at least, mm: common practice, no source. */
const strip = 3;

function hasWaste({ length, width }: Sheet, { box: { min, max }, radius }: Core): boolean {
  const off = radius + strip;
  return min.x >= off && min.y >= off && max.x <= length - off && max.y <= width - off;
}

/** Whether all edges that a stretch lies on may bear a tab. */
function standsOnly({ track, mayStand }: Way, { from, to }: Kept): boolean {
  const first = edgeAt(track, from + hair);
  const last = edgeAt(track, to - hair);
  for (let i = first; ; i = (i + 1) % track.edges.length) {
    if (!mayStand(track.edges[i]!)) return false;
    if (i === last) return true;
  }
}

const hair = 1e-6; // mm
const between = 3; // mm from one place of a tab's middle to the next: the thinnest bit is as wide

function coreOf({ track, tool }: Way, { from, to }: Kept): Core {
  const [a, b] = [from + tool.radius, to - tool.radius];
  const count = Math.max(1, Math.ceil((b - a) / between));
  const places = Array.from({ length: count + 1 }, (_, i) => placeAt(track, a + ((b - a) * i) / count));
  const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
  const box = { min: { x: Math.min(...xs), y: Math.min(...ys) }, max: { x: Math.max(...xs), y: Math.max(...ys) } };
  return { places, radius: tool.radius, box };
}

function isNear({ box, radius }: Core, other: Extents, otherRadius: number): boolean {
  const reach = radius + otherRadius;
  return (
    box.min.x - reach <= other.max.x &&
    box.max.x + reach >= other.min.x &&
    box.min.y - reach <= other.max.y &&
    box.max.y + reach >= other.min.y
  );
}

/** The stretches of a way on which its bit would cut into a tab's middle: where the two kerfs overlap, from half the bit
 *  before it to half the bit behind it. */
function stretchesPast({ track, tool }: Way, { places, radius }: Core): readonly Kept[] {
  const reach = radius + tool.radius - hair;
  const met: Kept[] = [];
  track.edges.forEach(({ a, b, length }, i) => {
    for (const p of places) {
      const foot = nearestOnEdge(a, b, p);
      if (Math.hypot(foot.x - p.x, foot.y - p.y) >= reach) continue;
      const s = track.at[i]! + shareOf(a, b, foot) * length;
      met.push({ from: s - tool.radius, to: s + tool.radius });
    }
  });
  return merged(met);
}

function merged(stretches: readonly Kept[]): readonly Kept[] {
  const whole: { from: number; to: number }[] = [];
  for (const { from, to } of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = whole[whole.length - 1];
    if (last && from <= last.to + hair) last.to = Math.max(last.to, to);
    else whole.push({ from, to });
  }
  return whole;
}
