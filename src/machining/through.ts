import { extentsOf } from "../geometry/measure.js";
import { offsetRegion } from "../geometry/offset.js";
import type { Profile, Region } from "../geometry/profile.js";
import { type Finding, mm, raise, text } from "../input/finding.js";
import type { Feature } from "../model/part.js";
import type { Move, WorkKind } from "../model/program.js";
import { nameOf } from "../plan/standing.js";
import type { Bench, Cut, Done, Lying, Tool } from "./bench.js";
import { centresInside, centresOutside } from "./centres.js";
import { clearArea } from "./clearing.js";
import { faultOf, tooShort, withheld } from "./faults.js";
import { noRoomForTabs } from "./findings.js";
import type { Bridges } from "./ramp.js";
import { directed, roundLoop } from "./round.js";
import { partRadius, placeTabs, tabHeight, tabRule } from "./tabs.js";
import { type Track, type TrackEdge, trackRound } from "./track.js";

/** What a skin leaves of the board, mm: common practice, no source. */
export const skinThickness = 0.5;

/** Cuts a part out of the sheet along its blank, held by tabs, or by a skin where the shop says so or no tab may stand. */
export function cutOutside(bench: Bench, lying: Lying, feature: Feature, tool: Tool): Done {
  const keep = lying.blank.outer;
  const centres = centresOutside(keep, tool.radius);
  if (centres.regions === undefined) return withheld(feature, faultOf(lying, feature, tool, centres));
  const short = tooShort(lying, feature, tool, -bench.through);
  if (short) return withheld(feature, short);
  const count = isSmall(keep) ? tabRule.smallCount : tabRule.count;
  const mayStand = (edge: TrackEdge) => !isGlued(lying, edge.a.by);
  const loops = centres.regions.map(({ outer }) => directed(outer, "inside", bench.cnc.direction));
  const bridges = loops.map((loop) => bridgesOn(bench, tool, loop, count, mayStand));
  const bySkin = bench.cnc.hold === "skin" || bridges.some((each) => each === undefined);
  const floor = bySkin ? skinFloor(bench) : bench.through;
  const cuts = loops.map((loop, i) => {
    const moves = roundLoop(bench, tool, loop, floor, cutLoops(lying), () => (bySkin ? undefined : bridges[i]));
    return cutOf(lying, feature, tool, "outside", moves, floor);
  });
  const findings = bySkin && bench.cnc.hold === "tabs" ? [leftOnSkin(lying)] : [];
  return { cuts, findings, withheld: [] };
}

/**
 * Cuts an opening along its edge; what drops out is held by tabs or a skin too, and cleared away whole where it is too
 * small for them.
 */
export function cutInside(bench: Bench, lying: Lying, feature: Feature, tool: Tool, opening: Profile): Done {
  const space: Region = { outer: opening, holes: [] };
  const centres = centresInside(space, tool.radius);
  if (centres.regions === undefined) return withheld(feature, faultOf(lying, feature, tool, centres));
  const short = tooShort(lying, feature, tool, -bench.through);
  if (short) return withheld(feature, short);
  const cuts = centres.regions.map((region) => {
    const dropped = offsetRegion(region, -tool.radius).length > 0;
    const loop = directed(region.outer, "outside", bench.cnc.direction);
    const count = isSmall(region.outer) ? tabRule.smallCount : tabRule.count;
    const bySkin = bench.cnc.hold === "skin" && dropped;
    const floor = bySkin ? skinFloor(bench) : bench.through;
    const bridges = dropped && !bySkin ? bridgesOn(bench, tool, loop, count, () => true) : undefined;
    const moves =
      dropped && !bySkin && bridges === undefined
        ? clearArea(bench, tool, region, floor)
        : roundLoop(bench, tool, loop, floor, cutLoops(lying), () => bridges);
    return cutOf(lying, feature, tool, "inside", moves, floor);
  });
  return { cuts, findings: [], withheld: [] };
}

/** What the leads keep off. */
const cutLoops = ({ blank, profile }: Lying): readonly Profile[] => [blank.outer, ...profile.holes];

function cutOf(lying: Lying, feature: Feature, tool: Tool, kind: WorkKind, moves: readonly Move[], floor: number): Cut {
  return { tool, operation: { kind, part: lying.part.id, feature: feature.id, moves, floor } };
}

const skinFloor = (bench: Bench): number => skinThickness - bench.thickness;

function bridgesOn(
  bench: Bench,
  tool: Tool,
  loop: Profile,
  count: number,
  mayStand: (edge: TrackEdge) => boolean,
): Bridges | undefined {
  const track: Track = trackRound(loop);
  const kept = placeTabs(track, tool.d, count, (edge) => isWide(edge, bench, tool) && mayStand(edge));
  return kept && { top: tabHeight(bench.thickness) - bench.thickness, kept };
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

function isSmall(loop: Profile): boolean {
  const { min, max } = extentsOf(loop);
  return max.x - min.x < tabRule.small && max.y - min.y < tabRule.small;
}

function leftOnSkin({ part }: Lying): Finding {
  const facts = { part: text(nameOf(part)), skin: mm(skinThickness) };
  return raise(noRoomForTabs, { at: part.from, on: [part.id], facts });
}
