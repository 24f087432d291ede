import fc from "fast-check";
import type { Profile, Region } from "../../../src/geometry/profile.js";
import { againstTheClock } from "../../../src/geometry/shapes.js";
import { mirrored, moved, turned } from "../../../src/geometry/transform.js";
import { seeded } from "../../geometry/support/seeded.js";
import { drawPair, drawShape } from "../../geometry/support/workshop.js";

const seeds = fc.integer({ min: 1, max: 2 ** 31 - 1 });

/** A shape of the workshop kind. */
export const workshopShape: fc.Arbitrary<Region> = seeds.map((seed) => drawShape(seeded(seed)).region);

/** Two that lie on, in or beside one another. */
export const workshopPair: fc.Arbitrary<{ a: Region; b: Region }> = seeds.map((seed) => drawPair(seeded(seed)));

/** A convex profile of lines and arcs: corners on a circle in order, each edge bowed out no farther than that circle. */
export const convex: fc.Arbitrary<Profile> = fc
  .tuple(fc.integer({ min: 3, max: 9 }), fc.double({ min: 10, max: 200, noNaN: true }), seeds)
  .map(([n, radius, seed]) => {
    const random = seeded(seed);
    const angles = Array.from({ length: n }, (_, i) => (2 * Math.PI * (i + random.between(0, 0.7))) / n);
    return angles.map((angle, i) => {
      const gap = ((angles[i + 1] ?? angles[0]! + 2 * Math.PI) - angle) / 4;
      const bulge = random.chance(0.5) ? 0 : Math.tan(gap) * random.between(0, 1);
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge, by: `e${i}` };
    });
  });

/** The same shape, walked from elsewhere, the other way round, turned, moved or mirrored: measures must not change. */
export const rewrites: readonly ((profile: Profile) => Profile)[] = [
  (p) => [...p.slice(1), ...p.slice(0, 1)],
  againstTheClock,
  mirrored,
  (p) => turned(p, 1.234),
  (p) => moved(p, 1234.5, -77),
];
