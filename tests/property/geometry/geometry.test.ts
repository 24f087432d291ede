import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { difference, intersection, union } from "../../../src/geometry/boolean.js";
import { congruence } from "../../../src/geometry/congruence.js";
import { type Corner, cornersOf } from "../../../src/geometry/corner.js";
import { profileFaults } from "../../../src/geometry/faults.js";
import { areaOf, areaOfRegion, lengthOf } from "../../../src/geometry/measure.js";
import { offsetProfile, offsetRegion } from "../../../src/geometry/offset.js";
import type { Profile, Region } from "../../../src/geometry/profile.js";
import { sureDifference, sureOffset } from "../../../src/geometry/sure.js";
import { mirrorRegion, moveRegion, turnRegion } from "../../../src/geometry/transform.js";
import { convex, rewrites, workshopPair, workshopShape } from "./shapes.js";

const runs = { seed: 20260, numRuns: 150 };
const needle = 2 * Math.acos(1 / 4); // rad
const area = (regions: readonly Region[]) => regions.reduce((sum, region) => sum + areaOfRegion(region), 0);
const solid = (outer: Profile): Region => ({ outer, holes: [] });
/** Noise of an area: a micrometre's thousandth along the edge. */
const slack = (...regions: readonly Region[]) =>
  1e-5 * regions.flatMap((r) => [r.outer, ...r.holes]).reduce((sum, loop) => sum + lengthOf(loop), 1);

describe("the algebra of booleans", () => {
  it("holds: A less B, and A with B, are A; A or B is both less what they share", () => {
    fc.assert(
      fc.property(workshopPair, ({ a, b }) => {
        const less = difference(a, [b]);
        const shared = intersection(a, b);
        const near = slack(a, b);
        expect(Math.abs(area(less) + area(shared) - areaOfRegion(a))).toBeLessThan(near);
        expect(Math.abs(area(union([a, b])) - (areaOfRegion(a) + areaOfRegion(b) - area(shared)))).toBeLessThan(near);
        const again = union([...less, ...shared]);
        expect(Math.abs(area(again) - areaOfRegion(a))).toBeLessThan(near);
        expect(area(difference(a, again))).toBeLessThan(near);
      }),
      runs,
    );
  });

  it("holds: the order does not matter, and nothing is left of A less A", () => {
    fc.assert(
      fc.property(workshopPair, ({ a, b }) => {
        expect(Math.abs(area(union([b, a])) - area(union([a, b])))).toBeLessThan(slack(a, b));
        expect(Math.abs(area(intersection(b, a)) - area(intersection(a, b)))).toBeLessThan(slack(a, b));
        expect(difference(a, [a])).toEqual([]);
        expect(Math.abs(area(union([a, a])) - areaOfRegion(a))).toBeLessThan(slack(a));
      }),
      runs,
    );
  });

  it("keeps names: every edge of a result bears that of an edge that went in", () => {
    fc.assert(
      fc.property(workshopPair, ({ a, b }) => {
        const names = new Set([a, b].flatMap((r) => [r.outer, ...r.holes]).flatMap((loop) => loop.map((v) => v.by)));
        const out = [...union([a, b]), ...difference(a, [b])].flatMap((r) => [r.outer, ...r.holes]).flat();
        expect(out.every((v) => names.has(v.by))).toBe(true);
      }),
      runs,
    );
  });
});

describe("offsets", () => {
  it("of a convex profile grow by Steiner's formula: A + L d + pi d^2", () => {
    // J. Steiner, "Ueber parallele Flaechen", 1840; e.g. L. Santalo, Integral Geometry and Geometric Probability, I.1
    fc.assert(
      fc.property(convex, fc.double({ min: 0.1, max: 60, noNaN: true }), (profile, d) => {
        const [grown, ...more] = offsetProfile(profile, d);
        expect(more).toEqual([]);
        const expected = areaOf(profile) + lengthOf(profile) * d + Math.PI * d * d;
        expect(Math.abs(areaOf(grown!) - expected) / expected).toBeLessThan(1e-9);
        expect(lengthOf(grown!)).toBeCloseTo(lengthOf(profile) + 2 * Math.PI * d, 6);
      }),
      runs,
    );
  });

  it("out and in again of a convex profile are the profile", () => {
    fc.assert(
      fc.property(convex, fc.double({ min: 0.1, max: 60, noNaN: true }), (profile, d) => {
        const back = offsetProfile(profile, d).flatMap((grown) => offsetProfile(grown, -d));
        expect(back).toHaveLength(1);
        expect(Math.abs(areaOf(back[0]!) - areaOf(profile))).toBeLessThan(slack(solid(profile)));
        expect(congruence(solid(profile), solid(back[0]!), 1e-5)).toMatchObject({ mirrored: false });
      }),
      runs,
    );
  });

  it("with a distance for each edge that is everywhere the same are the plain ones", () => {
    fc.assert(
      fc.property(workshopShape, fc.constantFrom(6, -6, 2.5, -3, -18, 18), (region, d) => {
        expect(offsetRegion(region, () => d)).toEqual(offsetRegion(region, d));
        expect(offsetRegion(region, () => d, { corners: "sharp" })).toEqual(
          offsetRegion(region, d, { corners: "sharp" }),
        );
      }),
      runs,
    );
  });

  it("with two distances lie between the plain ones", () => {
    fc.assert(
      fc.property(workshopShape, fc.constantFrom(1, -1), fc.constantFrom(6, 3, 1), (region, sign, more) => {
        const loop = region.outer;
        // a needle's mitre is cut off at four distances, the greater one's sooner than the mixed one's; so is that of
        // an arc, which curls away when it is carried on
        const plain = ({ turn, before, at }: Corner) => Math.abs(turn) < needle && before.bulge === 0 && at.bulge === 0;
        fc.pre(cornersOf(loop).every(plain));
        const chosen = new Set(loop.filter((_, i) => i % 2 === 0).map((v) => v.by));
        const each = offsetRegion(solid(loop), (by) => sign * (chosen.has(by) ? more : 0.5));
        const [lesser, greater] = [Math.min(sign * more, sign * 0.5), Math.max(sign * more, sign * 0.5)];
        // where two distances meet there is a mitre: it takes more than a round corner, whichever way the edges move
        const inner = offsetRegion(solid(loop), lesser, { corners: sign < 0 ? "sharp" : "round" });
        const outer = offsetRegion(solid(loop), greater, { corners: sign < 0 ? "round" : "sharp" });
        const near = slack(solid(loop), ...outer);
        expect(inner.reduce((sum, r) => sum + area(difference(r, each)), 0)).toBeLessThan(near);
        expect(each.reduce((sum, r) => sum + area(difference(r, outer)), 0)).toBeLessThan(near);
      }),
      runs,
    );
  });

  it("do not depend on where a profile starts, which way it runs, or where it lies", () => {
    fc.assert(
      fc.property(workshopShape, fc.constantFrom(6, -6, 1, -1), fc.constantFrom(...rewrites), (region, d, rewrite) => {
        const plain = offsetRegion(solid(region.outer), d);
        const other = offsetRegion(solid(rewrite(region.outer)), d);
        expect(other).toHaveLength(plain.length);
        expect(Math.abs(area(other) - area(plain))).toBeLessThan(slack(...plain));
        const around = (regions: readonly Region[]) => regions.reduce((sum, r) => sum + lengthOf(r.outer), 0);
        expect(around(other)).toBeCloseTo(around(plain), 4);
      }),
      runs,
    );
  });

  it("and booleans have no faults, and pass the guard", () => {
    fc.assert(
      fc.property(workshopPair, fc.constantFrom(6, -6, 2, -2), ({ a, b }, d) => {
        for (const found of [...offsetRegion(a, d), ...difference(a, [b])]) {
          for (const loop of [found.outer, ...found.holes]) expect(profileFaults(loop)).toEqual([]);
        }
        expect(sureOffset(a, d).doubt).toBeUndefined();
        expect(sureDifference(a, [b]).doubt).toBeUndefined();
      }),
      runs,
    );
  });
});

describe("congruence", () => {
  it("is found after any turn, and across a mirror", () => {
    fc.assert(
      fc.property(workshopShape, fc.double({ min: -3, max: 3, noNaN: true }), fc.boolean(), (region, turn, mirror) => {
        const there = moveRegion(turnRegion(mirror ? mirrorRegion(region) : region, turn), 40, -9);
        const found = congruence(region, there);
        expect(found).toBeDefined();
        const laid = turnRegion(found!.mirrored ? mirrorRegion(region) : region, found!.turn);
        const on = moveRegion(laid, found!.move.x, found!.move.y);
        expect(area(difference(on, [there]))).toBeLessThan(
          0.02 * Math.sqrt(areaOfRegion(region)) + 0.02 * lengthOf(region.outer),
        );
      }),
      runs,
    );
  });
});
