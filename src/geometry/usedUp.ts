import { bulgeOfSweep, radiusOf, shortWay, sweepOfBulge, vectorLength } from "./arc.js";
import { carriesBothOn, meetings, moveEdge } from "./movedEdge.js";
import type { Point, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/** An edge from its vertex to the next one's, and how far it is to be moved to the right. */
export type EdgeToMove = { readonly at: Vertex; readonly distance: number };

/**
 * A loop whose round corners that an offset uses up are sharp, where the distances beside them differ.
 *
 * A corner's arc that shrinks by its radius or more is gone, and its two neighbours meet. With one distance that comes of
 * itself; with several, what the neighbours would sweep past the arc's ends is swept only if they run on to where they
 * meet. An arc stays where its neighbours do not meet beyond it, and where neither sweeps as far as its centre.
 */
export function sharpWhereUsedUp(loop: readonly EdgeToMove[]): readonly EdgeToMove[] {
  const n = loop.length;
  const edge = (i: number) => loop[(i + n) % n]!;
  const tips = loop.map(({ at, distance }, i) => {
    const beside = [edge(i - 1).distance, edge(i + 1).distance];
    const unequal = beside.some((d) => d !== distance);
    const gone = (d: number) => isUsedUp(at, edge(i + 1).at, d);
    if (n < 4 || !unequal || !gone(distance) || !beside.some(gone)) return undefined;
    return tipOf(edge(i - 1).at, at, edge(i + 1).at, edge(i + 2).at);
  });
  if (tips.every((tip) => tip === undefined)) return loop;
  return loop.flatMap(({ at, distance }, i): EdgeToMove[] => {
    if (tips[i] !== undefined) return [];
    const from = tips[(i + n - 1) % n];
    const to = tips[(i + 1) % n];
    const bulge = carriedOn(at, edge(i + 1).at, from, to);
    return [{ at: { ...at, ...from, bulge }, distance }];
  });
}

function isUsedUp(a: Vertex, b: Point, distance: number): boolean {
  if (a.bulge * distance >= 0) return false;
  return radiusOf(vectorLength(b.x - a.x, b.y - a.y), a.bulge) <= Math.abs(distance) + tolerance.samePoint;
}

/** Where the edges before and after an arc meet, if both are carried on for it. */
function tipOf(before: Vertex, a: Vertex, b: Vertex, after: Point): Point | undefined {
  if (before.bulge * a.bulge < 0 || b.bulge * a.bulge < 0) return undefined; // curves away
  const one = moveEdge(before, a, 0);
  const two = moveEdge(b, after, 0);
  return meetings(one, two)
    .filter((tip) => carriesBothOn(one, two, tip))
    .map((tip) => ({ tip, away: vectorLength(tip.x - a.x, tip.y - a.y) }))
    .sort((p, q) => p.away - q.away)[0]?.tip;
}

/** Bulge of an edge from `a` to `b` that is carried back to `from` and on to `to` where they are given. */
function carriedOn(a: Vertex, b: Vertex, from: Point | undefined, to: Point | undefined): number {
  const { center, radius } = moveEdge(a, b, 0);
  if (center === undefined) return a.bulge;
  const more = (p: Point | undefined, q: Point | undefined) =>
    p === undefined || q === undefined ? 0 : sweepOfBulge(shortWay(center, radius, p, q));
  return bulgeOfSweep(sweepOfBulge(a.bulge) + more(from, from && a) + more(to && b, to));
}
