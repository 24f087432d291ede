import { anyOfFirst, firstOnly, loopsOf, type Resolved, resolve, resolveSegments } from "./boolean.js";
import { areaOf } from "./measure.js";
import type { Path, Profile, Region, Vertex } from "./profile.js";
import { type Corners, rawOffset } from "./rawOffset.js";
import { againstTheClock } from "./shapes.js";

export type OffsetOptions = { readonly corners?: Corners };

/** One distance for all edges, or one by an edge's name; mm. */
export type Distances = number | ((by: string) => number);

/**
 * Moves a closed profile sideways; arcs stay arcs.
 *
 * Shape:    counter-clockwise out, whichever way it came in.
 * Units:    mm; positive grows, negative shrinks.
 * Corners:  those that open are round (an arc named "a|b" after the edges it joins) or sharp (both edges carried on till
 *           they meet; farther than four distances it is round after all).
 * Returns:  none, one or several outer boundaries: a narrow neck splits, a small one vanishes. Growth that closes a bay
 *           leaves a hole; ask `offsetRegion` where that may be, here a bay that closes is filled.
 * Throws:   never. A self-crossing profile counts for what it runs round counter-clockwise.
 */
export function offsetProfile(profile: Profile, distance: number, options: OffsetOptions = {}): Profile[] {
  return resolveOffset({ outer: profile, holes: [] }, distance, options).regions.map((region) => region.outer);
}

/**
 * The same with a distance for each edge by its name. Where two distances meet at a corner both moved edges are carried
 * on or cut back till they meet (a mitre); where the edges run on smoothly there is a step across.
 */
export function offsetEach(
  profile: Profile,
  distanceOf: (by: string) => number,
  options: OffsetOptions = {},
): Profile[] {
  return resolveOffset({ outer: profile, holes: [] }, distanceOf, options).regions.map((region) => region.outer);
}

/** Moves all edges of a region: positive makes more material, so that holes shrink, vanish, or break out at the edge. */
export function offsetRegion(region: Region, distance: Distances, options: OffsetOptions = {}): Region[] {
  return resolveOffset(region, distance, options).regions;
}

/** The same, with whether the arrangement behind it was sound. */
export function resolveOffset(region: Region, distance: Distances, options: OffsetOptions = {}): Resolved {
  const of = typeof distance === "number" ? () => distance : distance;
  const outer = resolveLoop(region.outer, of, options);
  const holes = region.holes.map((hole) => resolveLoop(hole, (by) => -of(by), options));
  const sound = outer.sound && holes.every((hole) => hole.sound);
  const open = holes.flatMap((hole) => hole.regions);
  if (open.length === 0) return { regions: outer.regions, sound };
  const cut = resolve([...loopsOf(outer.regions, 0), ...loopsOf(open, 1)], firstOnly);
  return { regions: cut.regions, sound: sound && cut.sound };
}

/** Everything within `reach` of an open chain, mm: what a bit of twice that diameter clears along it, ends round. */
export function widen(path: Path, reach: number): Region[] {
  if (path.length < 2 || !path.every(isFinitePlace) || !(reach > 0)) return [];
  return resolveSegments(
    rawOffset(thereAndBack(path), () => reach, "round"),
    anyOfFirst,
  ).regions;
}

/** An open chain as a loop without area: out along it and back. */
function thereAndBack(path: Path): Profile {
  const back = path.slice(1).map((v, i) => ({ ...v, bulge: -path[i]!.bulge, by: path[i]!.by }));
  return [...path.slice(0, -1), ...back.reverse()];
}

function resolveLoop(profile: Profile, of: (by: string) => number, options: OffsetOptions): Resolved {
  const distances = profile.map((v) => of(v.by));
  if (!profile.every(isFinitePlace) || !distances.every(Number.isFinite)) return { regions: [], sound: false };
  if (distances.every((d) => d === 0)) return resolve([{ profile, side: 0, reverse: areaOf(profile) < 0 }], anyOfFirst);
  const loop = areaOf(profile) < 0 ? againstTheClock(profile) : profile;
  return resolveSegments(rawOffset(loop, of, options.corners ?? "round"), anyOfFirst);
}

function isFinitePlace(v: Vertex): boolean {
  return Number.isFinite(v.x) && Number.isFinite(v.y) && Number.isFinite(v.bulge);
}
