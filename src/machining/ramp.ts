import type { Move, MoveRole } from "../model/program.js";
import { bow, line, type Pace } from "./moves.js";
import { placeAt, reversedTrack, stepsAlong, type Track } from "./track.js";

/** A bit goes down along its path by this share of the way: 1 in 10, about 6 degrees, common practice, no source. */
const slope = 0.1;

/** On the shortest of loops it goes down by this a round, mm, however steep that is: common practice, no source. */
const pitch = 1;

const slopeOf = (track: Track): number => Math.max(slope, pitch / track.length);

/** On a slope it goes no faster down than straight down. */
function downPace(pace: Pace, steepness: number): Pace {
  return { ...pace, feed: Math.min(pace.feed, (pace.plunge * Math.hypot(1, steepness)) / steepness) };
}

/** A stretch of a loop that the bit must not cut below `top`, by the length along the loop, mm. */
export type Kept = { readonly from: number; readonly to: number };
export type Bridges = { readonly top: number; readonly kept: readonly Kept[] };

const noBridges: Bridges = { top: Number.NEGATIVE_INFINITY, kept: [] };

/** How a stretch is run: from one height to another, evenly by length. */
type Run = { readonly from: number; readonly to: number; readonly z0: number; readonly z1: number };

/**
 * Round a closed track down to each of some heights in turn, mm, from `z` above the first: down along the path, then
 * once round. Where bridges are to be left it lifts over them. It begins at length `start` of the track; the moves end
 * where the last round ends, at the returned length.
 */
export function rampedRounds(
  track: Track,
  start: number,
  z: number,
  heights: readonly number[],
  pace: Pace,
  bridges: Bridges = noBridges,
): { readonly moves: readonly Move[]; readonly end: number } {
  const moves: Move[] = [];
  const steepness = slopeOf(track);
  const entry = downPace(pace, steepness);
  let s = start;
  let above = z;
  for (const height of heights) {
    const down = (above - height) / steepness;
    moves.push(...stretch(track, { from: s, to: s + down, z0: above, z1: height }, entry, "entry", bridges));
    s += down;
    moves.push(...stretch(track, { from: s, to: s + track.length, z0: height, z1: height }, pace, "cut", bridges));
    s += track.length;
    above = height;
  }
  return { moves, end: s % track.length };
}

/**
 * Along an open track down to each of some heights, from `z`, mm: to and fro while it goes down, then back over what the
 * slope has left. It begins at the track's start; the moves end at one of its ends.
 */
export function rampedPasses(track: Track, z: number, heights: readonly number[], pace: Pace): readonly Move[] {
  const ways = [track, reversedTrack(track)] as const;
  const steepness = slopeOf(track);
  const entry = downPace(pace, steepness);
  const moves: Move[] = [];
  let way: 0 | 1 = 0;
  let above = z;
  for (const height of heights) {
    const legs = Math.max(2, 2 * Math.ceil((above - height) / steepness / (2 * track.length)));
    const leg = Math.min(track.length, (above - height) / steepness / legs);
    for (let i = 0; i < legs; i++) {
      const [z0, z1] = [i, i + 1].map((n) => above + ((height - above) * n) / legs) as [number, number];
      const there = ways[i % 2 === 0 ? way : ((1 - way) as 0 | 1)];
      const from = i % 2 === 0 ? 0 : track.length - leg;
      moves.push(...stretch(there, { from, to: from + leg, z0, z1 }, entry, "entry", noBridges));
    }
    moves.push(...stretch(ways[way], { from: 0, to: track.length, z0: height, z1: height }, pace, "cut", noBridges));
    way = way === 0 ? 1 : 0;
    above = height;
  }
  return moves;
}

/** One stretch of a track between two heights, lifted over bridges. */
function stretch(track: Track, run: Run, pace: Pace, role: MoveRole, { top, kept }: Bridges): readonly Move[] {
  if (run.to - run.from < 1e-9) return [];
  const heightAt = (s: number) => run.z0 + ((run.z1 - run.z0) * (s - run.from)) / (run.to - run.from);
  const over = Math.min(run.z0, run.z1) < top - 1e-9 ? bridgesWithin(track, run, kept) : [];
  const moves: Move[] = [];
  let z = run.z0;
  for (const part of partsOf(run, over, heightAt, top)) {
    const lifted = part.over && Math.min(heightAt(part.from), heightAt(part.to)) < top - 1e-9;
    const at = (s: number) => (lifted ? Math.max(top, heightAt(s)) : heightAt(s));
    if (Math.abs(at(part.from) - z) > 1e-9) {
      moves.push(line(placeAt(track, part.from), at(part.from), pace.plunge, lifted ? "tab" : "plunge"));
    }
    for (const { to, bulge, s } of stepsAlong(track, part.from, part.to)) {
      moves.push(bow(to, at(s), bulge, pace.feed, lifted ? "tab" : role));
    }
    z = at(part.to);
  }
  return moves;
}

type Part = { readonly from: number; readonly to: number; readonly over: boolean };

/** The stretches of bridges within a run, in the order in which they are met, round by round. */
function bridgesWithin(track: Track, run: Run, kept: readonly Kept[]): readonly Kept[] {
  const met: Kept[] = [];
  const rounds = Math.ceil((run.to - run.from) / track.length) + 1;
  const first = Math.floor(run.from / track.length) - 1;
  for (let round = first; round <= first + rounds + 1; round++) {
    for (const { from, to } of kept) {
      const [a, b] = [from + round * track.length, to + round * track.length];
      if (b > run.from && a < run.to) met.push({ from: Math.max(a, run.from), to: Math.min(b, run.to) });
    }
  }
  return met.sort((a, b) => a.from - b.from);
}

/** A run cut where bridges begin and end, and where a slope sinks to their top within one. */
function partsOf(run: Run, over: readonly Kept[], heightAt: (s: number) => number, top: number): readonly Part[] {
  const parts: Part[] = [];
  let s = run.from;
  const push = (to: number, isOver: boolean) => {
    if (to - s > 1e-9) parts.push({ from: s, to, over: isOver });
    s = Math.max(s, to);
  };
  for (const bridge of over) {
    push(bridge.from, false);
    const sinks = (run.z0 - top) / (run.z0 - run.z1 || 1);
    const crossing = run.from + sinks * (run.to - run.from);
    if (run.z0 > run.z1 && crossing > bridge.from && crossing < bridge.to && heightAt(bridge.from) > top) {
      push(crossing, true);
    }
    push(bridge.to, true);
  }
  push(run.to, false);
  return parts;
}
