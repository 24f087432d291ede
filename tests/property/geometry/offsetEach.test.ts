import { areaPathsD, booleanOpD, ClipType, FillRule, type PathD, type PathsD } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { difference } from "../../../src/geometry/boolean.js";
import { fillet } from "../../../src/geometry/corners.js";
import { areaOf, areaOfRegion, edgeLength, lengthOf } from "../../../src/geometry/measure.js";
import { offsetEach, offsetRegion } from "../../../src/geometry/offset.js";
import type { Point, Profile, Region } from "../../../src/geometry/profile.js";
import { polygon } from "../../../src/geometry/shapes.js";
import { sureOffset } from "../../../src/geometry/sure.js";
import { placeWithinSwept } from "../../../src/geometry/swept.js";
import { seeded } from "../../geometry/support/seeded.js";
import { workshopShape } from "./shapes.js";

// Each edge with a distance of its own, held against other ways to the same shape: half planes, moved lines, and sweeps
// joined by clipper2-ts.

const runs = { seed: 20261, numRuns: 250 };
const seeds = fc.integer({ min: 1, max: 2 ** 31 - 1 });
const name = (i: number) => `e${i}`;
const total = (profiles: readonly Profile[]) => profiles.reduce((sum, p) => sum + areaOf(p), 0);
const near = (profile: Profile) => 1e-4 * lengthOf(profile) + 1e-3;

type Moved = { readonly plate: Profile; readonly chosen: readonly number[] };

const distanceOf = (chosen: readonly number[]) => (by: string) => chosen[Number(by.slice(1))] ?? 0;

/** Corners on a circle in order; the gaps between them anything from a sliver to a third of the way round. */
function drawConvex(seed: number, distances: readonly number[]): Moved {
  const random = seeded(seed);
  const n = random.whole(3, 9);
  const gaps = Array.from({ length: n }, () => random.pick([0.05, 0.3, 1, 1]) * random.between(0.2, 1));
  const sum = gaps.reduce((a, b) => a + b, 0);
  let angle = random.between(0, 6);
  const points = gaps.map((gap) => {
    angle += (gap / sum) * 2 * Math.PI;
    return { x: 60 * Math.cos(angle), y: 60 * Math.sin(angle) };
  });
  return { plate: polygon(points, name), chosen: points.map(() => random.pick(distances)) };
}

/** The part of a polygon on the left of an endless line (I. Sutherland and G. Hodgman, CACM 17, 1974). */
function leftOf(points: readonly Point[], a: Point, b: Point): Point[] {
  const side = (p: Point) => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
  return points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const [sp, sq] = [side(p), side(q)];
    const t = sp / (sp - sq);
    const cross = sp >= 0 !== sq >= 0 ? [{ x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t }] : [];
    return sp >= 0 ? [p, ...cross] : cross;
  });
}

type Line = { readonly a: Point; readonly b: Point; readonly ux: number; readonly uy: number; readonly length: number };

/** Each edge's line moved to the right. */
function movedLines({ plate, chosen }: Moved): Line[] {
  return plate.map((a, i) => {
    const b = plate[(i + 1) % plate.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    const d = chosen[i]!;
    const beside = (p: Point) => ({ x: p.x + uy * d, y: p.y - ux * d });
    return { a: beside(a), b: beside(b), ux, uy, length };
  });
}

function meet(one: Line, two: Line): Point {
  const turn = one.ux * two.uy - one.uy * two.ux;
  const t = ((two.a.x - one.a.x) * two.uy - (two.a.y - one.a.y) * two.ux) / turn;
  return { x: one.a.x + one.ux * t, y: one.a.y + one.uy * t };
}

/** Whether all edges that move by different amounts meet within four of them: beyond, there is a step instead. */
function meetsNear({ plate, chosen }: Moved): boolean {
  const lines = movedLines({ plate, chosen });
  return plate.every((_, i) => {
    const next = (i + 1) % plate.length;
    if (chosen[i] === chosen[next]) return true;
    const p = meet(lines[i]!, lines[next]!);
    const corner = plate[next]!;
    return Math.hypot(p.x - corner.x, p.y - corner.y) < 4 * Math.max(Math.abs(chosen[i]!), Math.abs(chosen[next]!));
  });
}

describe("a convex plate cut back by a distance for each edge", () => {
  it("is what all the moved lines leave of it, however many edges are used up", () => {
    let usedUp = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const drawn = drawConvex(seed, [0, -1, -3, -6, -12, -25]);
        fc.pre(meetsNear(drawn));
        const { plate, chosen } = drawn;
        const left = movedLines(drawn).reduce<Point[]>((points, { a, b }) => leftOf(points, a, b), [...plate]);
        const wanted = left.length < 3 ? 0 : areaOf(polygon(left, name));
        const cut = offsetEach(plate, distanceOf(chosen));
        if (left.length > 2 && left.length < plate.length) usedUp++;
        expect(Math.abs(total(cut) - wanted)).toBeLessThan(near(plate));
        expect(cut).toHaveLength(wanted > near(plate) ? 1 : cut.length);
        expect(sureOffset({ outer: plate, holes: [] }, distanceOf(chosen)).doubt).toBeUndefined();
      }),
      runs,
    );
    expect(usedUp).toBeGreaterThan(30);
  });
});

/** Square corners only, left and right, in whole steps. */
function drawSquared(seed: number, distances: readonly number[]): Moved {
  const random = seeded(seed);
  const steps = random.whole(1, 4);
  const points: Point[] = [{ x: 0, y: 0 }];
  let x = 0;
  let y = random.whole(2, 6) * 10;
  const width = random.whole(8, 14) * 10;
  points.push({ x: width, y: 0 });
  x = width;
  for (let i = 0; i < steps; i++) {
    points.push({ x, y });
    x -= random.whole(2, 5) * 10;
    if (x < 15) break;
    points.push({ x, y });
    y += (random.chance(0.5) ? 1 : -1) * random.whole(1, 3) * 10;
    y = Math.max(20, y);
    if (points.at(-1)!.y === y) y += 10;
  }
  points.push({ x: Math.max(x, 0), y }, { x: 0, y });
  const plain = points.filter((p, i) => {
    const q = points[(i + 1) % points.length]!;
    return p.x !== q.x || p.y !== q.y;
  });
  const turn = random.chance(0.5) ? random.between(0, 6) : 0;
  const turned = plain.map((p) => ({
    x: p.x * Math.cos(turn) - p.y * Math.sin(turn),
    y: p.x * Math.sin(turn) + p.y * Math.cos(turn),
  }));
  return { plate: polygon(turned, name), chosen: turned.map(() => random.pick(distances)) };
}

describe("a plate with square corners", () => {
  it("has each edge on its own moved line, in or out, where none of them is used up", () => {
    let tried = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const drawn = drawSquared(seed, [0, 2, 4, -1, -3, -4]);
        const lines = movedLines(drawn);
        const corners = lines.map((line, i) => meet(lines[(i + lines.length - 1) % lines.length]!, line));
        fc.pre(corners.every((p) => Number.isFinite(p.x) && Number.isFinite(p.y)));
        const onward = corners.every((p, i) => {
          const q = corners[(i + 1) % corners.length]!;
          return (q.x - p.x) * lines[i]!.ux + (q.y - p.y) * lines[i]!.uy > 1;
        });
        fc.pre(onward);
        tried++;
        const wanted = polygon(corners, name);
        const cut = offsetEach(drawn.plate, distanceOf(drawn.chosen), { corners: "sharp" });
        const solid = (outer: Profile): Region => ({ outer, holes: [] });
        const missing = difference(solid(wanted), cut.map(solid));
        const more = cut.flatMap((outer) => difference(solid(outer), [solid(wanted)]));
        const apart = [...missing, ...more].reduce((sum, r) => sum + areaOfRegion(r), 0);
        expect(apart).toBeLessThan(near(drawn.plate));
        expect(sureOffset(solid(drawn.plate), distanceOf(drawn.chosen), { corners: "sharp" }).doubt).toBeUndefined();
      }),
      runs,
    );
    expect(tried).toBeGreaterThan(100);
  });
});

/** Round about the origin, so that it never crosses itself; inside corners and outside ones. */
function drawStar(seed: number, distances: readonly number[]): Moved {
  const random = seeded(seed);
  const n = random.whole(3, 12);
  const points = Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * (i + random.between(0, 0.6))) / n;
    const away = random.between(30, 120);
    return { x: away * Math.cos(angle), y: away * Math.sin(angle) };
  });
  return { plate: polygon(points, name), chosen: points.map(() => random.pick(distances)) };
}

/** All that the edges sweep by themselves, each a rectangle. */
function strips({ plate, chosen }: Moved): PathsD {
  return movedLines({ plate, chosen }).map((line, i): PathD => {
    const strip = [plate[i]!, plate[(i + 1) % plate.length]!, line.b, line.a].map(({ x, y }) => ({ x, y }));
    return areaPathsD([strip]) < 0 ? strip.reverse() : strip;
  });
}

const toPath = (profile: Profile): PathD => profile.map(({ x, y }) => ({ x, y }));
const clip = (type: ClipType, a: PathsD, b: PathsD) => areaPathsD(booleanOpD(type, a, b, FillRule.NonZero, 5));

describe("a plate of any shape", () => {
  it.each([
    ["cut back", [0, -1, -4, -9]],
    ["grown", [0, 1, 4, 9]],
  ])("%s: nothing is left nearer to an edge than its distance", (_, distances) => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const drawn = drawStar(seed, distances);
        const cut = offsetEach(drawn.plate, distanceOf(drawn.chosen));
        const swept = strips(drawn);
        const paths = cut.map(toPath);
        const shrinks = distances.some((d) => d < 0);
        const left = shrinks ? clip(ClipType.Intersection, paths, swept) : clip(ClipType.Difference, swept, paths);
        expect(left).toBeLessThan(near(drawn.plate));
      }),
      runs,
    );
  });

  it("with round corners that are used up, is cut back as the sharp one is", () => {
    let usedUp = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const drawn = drawConvex(seed, [0, -4, -9, -15]);
        fc.pre(meetsNear(drawn));
        const random = seeded(seed + 1);
        const radius = random.between(0.5, 6);
        const { profile, refused } = fillet(drawn.plate, radius);
        fc.pre(refused.length === 0);
        // every arc goes with the edge after it
        const rounded = profile.map((v) => ({ ...v, by: v.by.split("|").at(-1)! }));
        const [of, n] = [distanceOf(drawn.chosen), drawn.chosen.length];
        const gone = drawn.chosen.every((d, i) => -d > radius || d === drawn.chosen[(i + n - 1) % n]);
        fc.pre(gone && drawn.chosen.every((d) => -d > radius));
        usedUp++;
        expect(Math.abs(total(offsetEach(rounded, of)) - total(offsetEach(drawn.plate, of)))).toBeLessThan(
          near(drawn.plate),
        );
      }),
      { ...runs, numRuns: 150 },
    );
    expect(usedUp).toBeGreaterThan(20);
  });
});

const all = (distances: readonly number[], region: Region, seed: number) => {
  const random = seeded(seed);
  const names = [...new Set([region.outer, ...region.holes].flat().map((v) => v.by))];
  const table = new Map(names.map((by) => [by, random.pick(distances)]));
  return (by: string) => table.get(by) ?? 0;
};

describe("the guard of unequal distances", () => {
  it.each([
    ["cut back", [0, -1, -3, -9]],
    ["grown", [0, 1, 3, 9]],
  ])("has no doubt about a workshop shape %s by different distances", (_, distances) => {
    fc.assert(
      fc.property(workshopShape, seeds, (region, seed) => {
        expect(sureOffset(region, all(distances, region, seed)).doubt).toBeUndefined();
      }),
      runs,
    );
  });

  it("has no doubt about sharp corners, straight or curved", () => {
    fc.assert(
      fc.property(workshopShape, fc.constantFrom(6, -6, 2, -3, 18), (region, d) => {
        // the polygon library's rounding turns shorter edges, and their mitres with them
        const edges = [region.outer, ...region.holes].flatMap((loop) =>
          loop.map((v, i) => edgeLength(v, loop[(i + 1) % loop.length]!)),
        );
        fc.pre(Math.min(...edges) > 0.01);
        expect(sureOffset(region, d, { corners: "sharp" }).doubt).toBeUndefined();
      }),
      runs,
    );
  });

  it("sees an edge that was not moved far enough, wherever it is", () => {
    fc.assert(
      fc.property(workshopShape, seeds, fc.boolean(), (region, seed, grow) => {
        const asked = all(grow ? [3, 5] : [-3, -5], region, seed);
        const found = offsetRegion(region, asked);
        fc.pre(found.length > 0);
        expect(placeWithinSwept(region, asked, found)).toBeUndefined();
        const short = offsetRegion(region, (by) => asked(by) - (grow ? 0.1 : -0.1));
        expect(placeWithinSwept(region, asked, short)).toBeDefined();
      }),
      { ...runs, numRuns: 80 },
    );
  });
});
