import { booleanOpD, ClipType, EndType, FillRule, inflatePathsD, JoinType, type PathsD } from "clipper2-ts";
import makerjs from "makerjs";
import { bench, describe } from "vitest";
import { arcOf } from "../../src/geometry/arc.js";
import { difference } from "../../src/geometry/boolean.js";
import { offsetProfile } from "../../src/geometry/offset.js";
import type { Profile } from "../../src/geometry/profile.js";
import { sureDifference, sureOffset } from "../../src/geometry/sure.js";
import { tessellate } from "../../src/geometry/tessellate.js";
import { turned } from "../../src/geometry/transform.js";

// An offset and a difference of 10, 100, 1,000 and 10,000 segments: ours, the same with its guard, clipper2-ts and
// makerjs, in one run:
//   npx vitest bench --run tests/bench/geometry.bench.ts
//
// The shape is a wheel with teeth, half its edges arcs. Ours and makerjs keep the arcs; clipper2-ts gets chords that
// stand off by 0.01 mm, which are made once, outside the clock. The guard asks clipper2-ts with chords of 0.05.
// makerjs takes minutes at 1,000 segments and is left out there.

const chord = 0.01;
const distance = 1;
const slowest = 100; // segments for makerjs
const timing = { time: 300, iterations: 3, warmupTime: 50, warmupIterations: 1 };

for (const segments of [10, 100, 200, 1000, 10_000]) {
  const profile = wheel(segments);
  const other = turned(profile, 0.3 / segments + Math.PI / segments);
  const region = { outer: profile, holes: [] };
  const cutter = { outer: other, holes: [] };
  const [chords, otherChords]: PathsD[] = [[tessellate(profile, chord)], [tessellate(other, chord)]];

  describe(`an offset of ${segments} segments`, () => {
    bench("ours", () => void offsetProfile(profile, -distance), timing);
    bench("ours with its guard", () => void sureOffset(region, -distance), timing);
    bench(
      "clipper2-ts, chord 0.01",
      () => void inflatePathsD(chords!, -distance, JoinType.Round, EndType.Polygon, 2, 4, chord),
      timing,
    );
    if (segments > slowest) return;
    bench("makerjs", () => void makerjs.model.outline(makerModel(profile), distance, 0, true), timing);
  });

  describe(`a difference of twice ${segments} segments`, () => {
    bench("ours", () => void difference(region, [cutter]), timing);
    bench("ours with its guard", () => void sureDifference(region, [cutter]), timing);
    bench(
      "clipper2-ts, chord 0.01",
      () => void booleanOpD(ClipType.Difference, chords!, otherChords!, FillRule.Positive, 4),
      timing,
    );
    if (segments > slowest) return;
    bench("makerjs", () => void makerjs.model.combineSubtraction(makerModel(profile), makerModel(other)), timing);
  });
}

/** Teeth 8 mm wide and 10 mm apart: a round top, a straight flank, a round bottom, a straight flank. */
function wheel(segments: number): Profile {
  const teeth = Math.max(2, Math.round(segments / 4));
  const inner = Math.max(20, (teeth * 18) / (2 * Math.PI));
  const outer = inner + 8;
  const step = (2 * Math.PI) / teeth;
  const vertices = Array.from({ length: teeth }, (_, i) => {
    const at = (radius: number, share: number, bulge: number) => {
      const angle = (i + share) * step;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge, by: `tooth${i}` };
    };
    return [at(outer, 0, 0.3), at(outer, 0.45, 0), at(inner, 0.5, -0.3), at(inner, 0.95, 0)];
  }).flat();
  return vertices;
}

function makerModel(profile: Profile): MakerJs.IModel {
  const paths: Record<string, MakerJs.IPath> = {};
  profile.forEach((a, i) => {
    const b = profile[(i + 1) % profile.length]!;
    if (a.bulge === 0) {
      paths[`p${i}`] = new makerjs.paths.Line([a.x, a.y], [b.x, b.y]);
      return;
    }
    const { center, radius, start, sweep } = arcOf(a, b);
    const degrees = [start, start + sweep].map((angle) => (angle * 180) / Math.PI);
    const [from, to] = sweep > 0 ? degrees : degrees.reverse();
    paths[`p${i}`] = new makerjs.paths.Arc([center.x, center.y], radius, from!, to!);
  });
  return { paths };
}
