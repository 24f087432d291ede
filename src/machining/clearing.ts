import { offsetRegion } from "../geometry/offset.js";
import { clipPath } from "../geometry/path.js";
import type { Point, Profile, Region } from "../geometry/profile.js";
import type { Move } from "../model/program.js";
import type { Cnc } from "../model/shop.js";
import type { Bench, Tool } from "./bench.js";
import { approach, endOf, line, rise, slowFrom } from "./moves.js";
import { rampedRounds } from "./ramp.js";
import { directed, heightsTo, paceFor } from "./round.js";
import { longestMiddle, nearestLength, placeAt, trackRound } from "./track.js";

/** From one ring to the next, in radii of the bit: at less than one nothing is left between them, in corners of any
 *  angle over 50 degrees; common practice. */
const stepShare = 0.8;

/** A bit that is this many times its width away goes over the board, not through it. */
const farAway = 2;

/** Rings of the bit's centre that clear an area, each inside the next; the innermost first, the wall last. */
export function ringsOf(centres: Region, radius: number, direction: Cnc["direction"]): readonly Profile[] {
  const inner = offsetRegion(centres, -stepShare * radius);
  return [
    ...inner.flatMap((region) => ringsOf(region, radius, direction)),
    ...centres.holes.map((loop) => directed(loop, "inside", direction)),
    directed(centres.outer, "outside", direction),
  ];
}

/**
 * Clears an area to a floor, from the sheet's top: at each depth from the middle to the wall. The bit goes down along the
 * innermost ring, and crosses to the next one at depth where the way lies within the area.
 *
 * `centres`: where the bit's centre may stand, one region.
 */
export function clearArea(bench: Bench, tool: Tool, centres: Region, floor: number): readonly Move[] {
  const rings = ringsOf(centres, tool.radius, bench.cnc.direction);
  const heights = heightsTo(bench, tool, -floor);
  const pace = paceFor(bench, tool, heights);
  const moves: Move[] = [];
  heights.forEach((height, i) => {
    const above = heights[i - 1] ?? 0;
    for (const ring of rings) moves.push(...ringMoves(ring, moves[moves.length - 1], above, height));
  });
  return [...moves, rise(endOf(moves), bench.safe)];

  function ringMoves(ring: Profile, last: Move | undefined, above: number, height: number): readonly Move[] {
    const track = trackRound(ring);
    const from = last && { x: last.to[0], y: last.to[1] };
    const start = from ? nearestLength(track, from) : longestMiddle(track);
    const at = placeAt(track, start);
    const round = (z: number) => rampedRounds(track, start, z, [height], pace).moves;
    const crosses = from !== undefined && liesWithin(from, at, centres);
    const depth = last?.to[2];
    if (crosses && depth === above) return [line(at, above, pace.feed, "cut"), ...round(above)];
    if (crosses && depth === height && isNear(from, at)) return [line(at, height, pace.feed, "cut"), ...round(height)];
    const over = from ? [rise(from, bench.safe)] : [];
    return [...over, ...approach(at, above + slowFrom, bench.safe, pace), ...round(above + slowFrom)];
  }

  function isNear(from: Point, to: Point): boolean {
    return Math.hypot(from.x - to.x, from.y - to.y) <= farAway * tool.d;
  }
}

/** Whether the straight way between two places stays where the bit's centre may stand. */
function liesWithin(from: Point, to: Point, area: Region): boolean {
  if (Math.hypot(from.x - to.x, from.y - to.y) < 1e-9) return true;
  const way = [
    { ...from, bulge: 0, by: "" },
    { ...to, bulge: 0, by: "" },
  ];
  return clipPath(way, false, [area], "outside").length === 0;
}
