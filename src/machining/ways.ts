import { offsetRegion } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import type { Feature } from "../model/part.js";
import type { Bench, Done, Lying, Tool } from "./bench.js";
import { centresInside, centresOutside } from "./centres.js";
import { faultOf, tooShort, withheld } from "./faults.js";
import { directed } from "./round.js";
import { isSmall, partRadius, tabRule } from "./tabs.js";
import { type Track, type TrackEdge, trackRound } from "./track.js";

/** A way of the bit's centre through the board: round a part, or along an opening's edge. */
export type Way = {
  readonly lying: Lying;
  readonly feature: Feature;
  readonly tool: Tool;
  readonly kind: "inside" | "outside";
  readonly loop: Profile;
  readonly track: Track;
  /** Where the centre may stand, of an opening. */
  readonly area?: Region;
  /** Whether what lies within an opening comes loose: it is wider than what the bit clears on its way. */
  readonly dropped: boolean;
  /** Tabs it needs. */
  readonly count: number;
  readonly mayStand: (edge: TrackEdge) => boolean;
};

/** The ways of a feature, or that it is left out. */
export type Ways = { readonly ways: readonly Way[]; readonly left?: Done };

/** Round a part along its blank. No tab on an edge that is glued, nor where it could not be trimmed. */
export function waysOutside(bench: Bench, lying: Lying, feature: Feature, tool: Tool): Ways {
  const keep = lying.blank.outer;
  const centres = centresOutside(keep, tool.radius);
  if (centres.regions === undefined)
    return { ways: [], left: withheld(feature, faultOf(lying, feature, tool, centres)) };
  const short = tooShort(lying, feature, tool, -bench.through);
  if (short) return { ways: [], left: withheld(feature, short) };
  const mayStand = (edge: TrackEdge) => isWide(edge, bench, tool) && !isGlued(lying, edge.a.by);
  const ways = centres.regions.map(({ outer }): Way => {
    const loop = directed(outer, "inside", bench.cnc.direction);
    const common = { lying, feature, tool, loop, track: trackRound(loop), mayStand };
    return { ...common, kind: "outside", dropped: true, count: tabCount(keep) };
  });
  return { ways };
}

/** Along an opening's edge. */
export function waysInside(bench: Bench, lying: Lying, feature: Feature, tool: Tool, opening: Profile): Ways {
  const centres = centresInside({ outer: opening, holes: [] }, tool.radius);
  if (centres.regions === undefined)
    return { ways: [], left: withheld(feature, faultOf(lying, feature, tool, centres)) };
  const short = tooShort(lying, feature, tool, -bench.through);
  if (short) return { ways: [], left: withheld(feature, short) };
  const mayStand = (edge: TrackEdge) => isWide(edge, bench, tool);
  const ways = centres.regions.map((area): Way => {
    const loop = directed(area.outer, "outside", bench.cnc.direction);
    const dropped = offsetRegion(area, -tool.radius).length > 0;
    const common = { lying, feature, tool, loop, track: trackRound(loop), mayStand };
    return { ...common, kind: "inside", area, dropped, count: tabCount(area.outer) };
  });
  return { ways };
}

/** Whether the part's edge beside an edge of the path is straight or turns widely enough to be trimmed. */
function isWide(edge: TrackEdge, { cnc }: Bench, { radius }: Tool): boolean {
  // in a climb cut what is kept lies to the right: an arc that turns left is wider there than the path
  return partRadius(edge, cnc.direction === "climb" ? -radius : radius) >= tabRule.arc;
}

/** Whether an edge is glued to another part: what is left of a tab would keep the joint open. */
function isGlued({ part }: Lying, by: string): boolean {
  return by.split("|").some((name) => part.edges[name]?.finish.kind === "joint");
}

const tabCount = (loop: Profile): number => (isSmall(loop) ? tabRule.smallCount : tabRule.count);
