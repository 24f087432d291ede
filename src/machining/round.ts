import { areaOf } from "../geometry/measure.js";
import type { Profile } from "../geometry/profile.js";
import { againstTheClock } from "../geometry/shapes.js";
import type { Move } from "../model/program.js";
import type { Cnc } from "../model/shop.js";
import type { Bench, Tool } from "./bench.js";
import { leadsOn, type WasteSide } from "./lead.js";
import { approach, bow, endOf, rise, slowFrom } from "./moves.js";
import { passesTo } from "./passes.js";
import { type Bridges, rampedRounds } from "./ramp.js";
import { paceOf } from "./speeds.js";
import { longestMiddle, placeAt, trackRound } from "./track.js";

/**
 * A loop walked so that the bit cuts as the shop wants it. Climb: what is kept lies to the right of the way, seen from
 * above, since the bit turns with the clock; so round the outside with the clock, round the inside against it.
 * `kept`: where what is kept lies.
 */
export function directed(loop: Profile, kept: "inside" | "outside", direction: Cnc["direction"]): Profile {
  const left = kept === "inside" ? "conventional" : "climb"; // the direction of a walk against the clock
  const ccw = areaOf(loop) > 0;
  return (direction === left) === ccw ? loop : againstTheClock(loop);
}

/** Waste lies opposite of what is kept. */
export const wasteSide = (direction: Cnc["direction"]): WasteSide => (direction === "climb" ? "left" : "right");

/** Down to a depth in passes, as z of each, mm. */
export function heightsTo(bench: Bench, tool: Tool, depth: number): readonly number[] {
  const upCut = tool.bit.kind === "compression" ? (tool.bit["up-cut"] ?? tool.d) : 0;
  return passesTo(depth, tool.d, bench.light, upCut).map((pass) => -pass);
}

/** The pace of a set of passes, by the deepest step among them. */
export function paceFor(bench: Bench, tool: Tool, heights: readonly number[], from = 0) {
  const deepest = heights.reduce((most, z, i) => Math.max(most, (heights[i - 1] ?? from) - z), 0);
  return paceOf(bench.cnc, tool.speeds, tool.d, deepest);
}

/** How far a lead swings out, as a share of the clearance between parts: it never comes near a neighbour. */
const leadShare = 0.75;

/**
 * Round one loop of the bit's centre, from the sheet's top down to `floor`: on to it along an arc in the waste, down
 * along the path, off along an arc.
 *
 * `clear`: the loops that the leads keep off.
 */
export function roundLoop(
  bench: Bench,
  tool: Tool,
  loop: Profile,
  floor: number,
  clear: readonly Profile[],
  bridges?: Bridges,
): readonly Move[] {
  const track = trackRound(loop);
  const start = longestMiddle(track);
  const heights = heightsTo(bench, tool, -floor);
  const pace = paceFor(bench, tool, heights);
  const size = leadShare * bench.cnc.clearance;
  const leads = leadsOn(track, start, wasteSide(bench.cnc.direction), size, tool.radius, clear);
  const rounds = rampedRounds(track, start, slowFrom, heights, pace, bridges);
  const begin = leads?.from ?? placeAt(track, start);
  const moves: Move[] = [...approach(begin, slowFrom, bench.safe, pace)];
  if (leads) moves.push(bow(placeAt(track, start), slowFrom, leads.bulge, pace.feed, "lead"));
  moves.push(...rounds.moves);
  const off = leads?.to(rounds.end);
  if (leads && off) moves.push(bow(off, moves[moves.length - 1]!.to[2], leads.bulge, pace.feed, "lead"));
  moves.push(rise(endOf(moves), bench.safe));
  return moves;
}
