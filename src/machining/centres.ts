import { midpoint } from "../geometry/arc.js";
import { difference } from "../geometry/boolean.js";
import { nearestOn } from "../geometry/distance.js";
import { areaOfRegion, eachEdge, edgeLength } from "../geometry/measure.js";
import { offsetRegion } from "../geometry/offset.js";
import type { Point, Profile, Region, Vertex } from "../geometry/profile.js";
import { type Doubt, sureOffset } from "../geometry/sure.js";

/** A place that a round bit does not reach, and how far short of it the bit stays, mm. */
export type Missed = { readonly at: Point; readonly left: number };

/** Where the bit's centre may stand, or why that cannot be said. */
export type Centres =
  | { readonly regions: readonly Region[]; readonly doubt?: undefined; readonly missed?: undefined }
  | { readonly regions?: undefined; readonly doubt: Doubt; readonly missed?: undefined }
  | { readonly regions?: undefined; readonly doubt?: undefined; readonly missed: Missed };

/**
 * Two numbers that decide here, mm. `reach`: less than this left standing is nothing, as no machine repeats better.
 * `fit`: how much nearer than its radius a bit may come where it otherwise would not go in, so that it goes into a slot
 * exactly as wide as itself; far below what a machine repeats, and below what may be cut into a part.
 */
const reach = 0.01;
const fit = 0.0005;

/** Where the centre of a bit may stand so that it clears a space and nothing beside it. */
export function centresInside(space: Region, radius: number): Centres {
  const exact = within(space, radius);
  return exact.missed === undefined ? exact : within(space, radius - fit);
}

/** The lines along which a bit's centre runs round what is kept: its outer loop alone, and what it cannot get at. */
export function centresOutside(keep: Profile, radius: number): Centres {
  const exact = around(keep, radius);
  return exact.missed === undefined ? exact : around(keep, radius - fit);
}

function within(space: Region, radius: number): Centres {
  const moved = sureOffset(space, -radius);
  if (moved.doubt !== undefined) return { doubt: moved.doubt };
  const regions = moved.value.map(withoutSpecks);
  const swept = regions.flatMap((region) => offsetRegion(region, radius));
  const missed = missedIn(space, swept, regions, radius);
  return missed === undefined ? { regions } : { missed };
}

function around(keep: Profile, radius: number): Centres {
  const solid: Region = { outer: keep, holes: [] };
  const moved = sureOffset(solid, radius);
  if (moved.doubt !== undefined) return { doubt: moved.doubt };
  const regions = moved.value.map(withoutSpecks);
  const spared = regions.flatMap((region) => offsetRegion(region, -radius));
  if (Math.abs(total(spared) - areaOfRegion(solid)) < nothing) return { regions };
  const missed = deepest(
    spared.flatMap((one) => difference(one, [solid])),
    regions,
    radius,
  );
  return missed === undefined ? { regions } : { missed };
}

const nothing = 1e-3; // mm2: a corner left by a bit of 0.1 mm has more

function missedIn(
  space: Region,
  swept: readonly Region[],
  centres: readonly Region[],
  radius: number,
): Missed | undefined {
  if (Math.abs(total(swept) - areaOfRegion(space)) < nothing) return undefined;
  return deepest(difference(space, swept), centres, radius);
}

/** The place of what is left that lies farthest from where the bit comes. */
function deepest(left: readonly Region[], centres: readonly Region[], radius: number): Missed | undefined {
  const lines = centres.flatMap((region) => [region.outer, ...region.holes]);
  let worst: Missed | undefined;
  for (const place of left.flatMap((region) => placesOn(region.outer))) {
    const away = Math.min(...lines.map((line) => nearestOn(line, place)?.distance ?? Number.POSITIVE_INFINITY));
    // where the bit does not go in at all, what is left is what it would have had to clear
    const short = Number.isFinite(away) ? away - radius : 2 * radius;
    if (short > reach && short > (worst?.left ?? 0)) worst = { at: place, left: short };
  }
  return worst;
}

function placesOn(loop: Profile): Point[] {
  const places: Point[] = [];
  eachEdge(loop, (a, b) => {
    places.push({ x: a.x, y: a.y }, midpoint(a, b));
  });
  return places;
}

const total = (regions: readonly Region[]): number => regions.reduce((sum, region) => sum + areaOfRegion(region), 0);

/** Without the edges that are left of an arc as round as the bit: shorter than a machine's finest steps. */
function withoutSpecks(region: Region): Region {
  return { outer: cleaned(region.outer), holes: region.holes.map(cleaned) };
}

const speck = 4 * fit;

function cleaned(loop: Profile): Profile {
  const kept: Vertex[] = [];
  eachEdge(loop, (a, b) => {
    if (edgeLength(a, b) > speck) kept.push(a);
  });
  return kept.length >= 2 ? kept : loop;
}
