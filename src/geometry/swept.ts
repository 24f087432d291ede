import { arcOf, isFlat, midpoint, sweepOfBulge, vectorLength } from "./arc.js";
import { eachEdge } from "./measure.js";
import type { Point, Profile, Region, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/**
 * A place on the boundary of a moved region that lies in what one of the edges sweeps, so nearer to it than its distance;
 * undefined where there is none. Ends and middles of the found edges are looked at.
 *
 * Not asked of an edge beside one that moves the other way: where the two meet, the one that grows is cut back.
 */
export function placeWithinSwept(
  region: Region,
  distanceOf: (by: string) => number,
  found: readonly Region[],
): Point | undefined {
  const strips = [
    ...stripsOf(region.outer, distanceOf),
    ...region.holes.flatMap((hole) => stripsOf(hole, (by) => -distanceOf(by))),
  ];
  return found
    .flatMap((one) => [one.outer, ...one.holes])
    .flatMap(placesOn)
    .find((p) => strips.some((within) => within(p)));
}

type Within = (p: Point) => boolean;

const hair = 100 * tolerance.samePoint; // where edges meet at a slant, noise moves a corner by a multiple of itself

function stripsOf(loop: Profile, distanceOf: (by: string) => number): Within[] {
  const n = loop.length;
  const distances = loop.map((v) => distanceOf(v.by));
  return loop.flatMap((a, i): Within[] => {
    const d = distances[i]!;
    const mixed = distances[(i + 1) % n]! * d < 0 || distances[(i + n - 1) % n]! * d < 0;
    return mixed || Math.abs(d) <= 2 * hair ? [] : [stripOf(a, loop[(i + 1) % n]!, d)];
  });
}

function stripOf(a: Vertex, b: Point, distance: number): Within {
  const beside = isFlat(a, b) ? besideLine(a, b) : besideArc(a, b);
  return (p) => {
    const off = beside(p);
    return off !== undefined && off * distance > 0 && Math.abs(off) > hair && Math.abs(off) < Math.abs(distance) - hair;
  };
}

/** How far to the right of an edge a place lies; undefined where it lies past the ends. */
type Beside = (p: Point) => number | undefined;

function besideLine(a: Point, b: Point): Beside {
  const length = vectorLength(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  return (p) => {
    const along = (p.x - a.x) * ux + (p.y - a.y) * uy;
    return along > hair && along < length - hair ? (p.x - a.x) * uy - (p.y - a.y) * ux : undefined;
  };
}

function besideArc(a: Vertex, b: Point): Beside {
  const { center, radius, start } = arcOf(a, b);
  const sweep = sweepOfBulge(a.bulge);
  return (p) => {
    const away = vectorLength(p.x - center.x, p.y - center.y);
    const turn = (Math.atan2(p.y - center.y, p.x - center.x) - start) * Math.sign(sweep);
    const along = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
    const inside = along * away > hair && (Math.abs(sweep) - along) * away > hair;
    return inside ? (away - radius) * Math.sign(sweep) : undefined;
  };
}

function placesOn(loop: Profile): Point[] {
  const places: Point[] = [];
  eachEdge(loop, (a, b) => places.push(a, midpoint(a, b)));
  return places;
}
