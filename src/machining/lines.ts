import type { Path, Profile } from "../geometry/profile.js";
import type { Move } from "../model/program.js";
import type { Bench, Tool } from "./bench.js";
import { approach, endOf, rise, slowFrom } from "./moves.js";
import { rampedPasses, rampedRounds } from "./ramp.js";
import { heightsTo, paceFor } from "./round.js";
import { longestMiddle, placeAt, trackAlong, trackRound } from "./track.js";

/** Along an open line of the bit's centre to a depth, to and fro, from safe height to safe height. */
export function alongPath(bench: Bench, tool: Tool, path: Path, depth: number): readonly Move[] {
  const track = trackAlong(path);
  const heights = heightsTo(bench, tool, depth);
  const pace = paceFor(bench, tool, heights);
  const moves = [
    ...approach(placeAt(track, 0), slowFrom, bench.safe, pace),
    ...rampedPasses(track, slowFrom, heights, pace),
  ];
  return [...moves, rise(endOf(moves), bench.safe)];
}

/** Round a closed line of the bit's centre to a depth, in its own direction, from safe height to safe height. */
export function roundPath(bench: Bench, tool: Tool, loop: Profile, depth: number): readonly Move[] {
  const track = trackRound(loop);
  const start = longestMiddle(track);
  const heights = heightsTo(bench, tool, depth);
  const pace = paceFor(bench, tool, heights);
  const moves = [
    ...approach(placeAt(track, start), slowFrom, bench.safe, pace),
    ...rampedRounds(track, start, slowFrom, heights, pace).moves,
  ];
  return [...moves, rise(endOf(moves), bench.safe)];
}
