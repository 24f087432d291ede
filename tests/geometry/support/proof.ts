import { midpoint } from "../../../src/geometry/arc.js";
import { difference, intersection, union } from "../../../src/geometry/boolean.js";
import { cornersOf } from "../../../src/geometry/corner.js";
import { nearestOn } from "../../../src/geometry/distance.js";
import { edgeLength } from "../../../src/geometry/measure.js";
import { offsetRegion } from "../../../src/geometry/offset.js";
import type { Region } from "../../../src/geometry/profile.js";
import { disagreement, oracleBoolean, oracleOffset } from "./oracle.js";
import { seeded } from "./seeded.js";
import { drawPair, drawShape } from "./workshop.js";

/** How often each family was tried, and every disagreement with its seed. */
export type Proof = { readonly tried: Record<string, number>; readonly faults: string[] };

/** Moves one seeded shape per seed and asks the oracle, first at `chord`, mm. */
export function proveOffsets(from: number, count: number, chord: number): Proof {
  const proof: Proof = { tried: {}, faults: [] };
  for (let seed = from; seed < from + count; seed++) {
    const { family, region, distance } = drawShape(seeded(seed));
    const found = offsetRegion(region, distance);
    const strayed = strayFrom(region, distance, found);
    note(proof, family, seed, strayed ?? disagreement(found, (c) => oracleOffset(region, distance, "round", c), chord));
  }
  return proof;
}

/** The same with sharp corners, for straight edges: the polygon library carries no arcs on. Needles are left out, as both
 *  cut their mitres off, but not alike; so are edges so short that the polygon library's rounding turns them, and their
 *  mitres with them. */
export function proveSharpOffsets(from: number, count: number, chord: number): Proof {
  const proof: Proof = { tried: {}, faults: [] };
  for (let seed = from; seed < from + count; seed++) {
    const { family, region, distance } = drawShape(seeded(seed));
    const loops = [region.outer, ...region.holes];
    if (loops.flat().some((v) => v.bulge !== 0)) continue;
    if (loops.some((loop) => loop.some((v, i) => edgeLength(v, loop[(i + 1) % loop.length]!) < 0.01))) continue;
    if (loops.flatMap((loop) => cornersOf(loop)).some((corner) => Math.abs(corner.turn) > needle)) continue;
    const found = offsetRegion(region, distance, { corners: "sharp" });
    note(
      proof,
      family,
      seed,
      disagreement(found, (c) => oracleOffset(region, distance, "sharp", c), chord),
    );
  }
  return proof;
}

const needle = 2 * Math.acos(1 / 4) - 1e-6; // rad; beyond, a mitre is longer than four distances

/** Joins, cuts and intersects one seeded pair per seed and asks the oracle, first at `chord`, mm. */
export function proveBooleans(from: number, count: number, chord: number): Proof {
  const proof: Proof = { tried: {}, faults: [] };
  for (let seed = from; seed < from + count; seed++) {
    const { family, a, b } = drawPair(seeded(seed));
    const found = { union: union([a, b]), difference: difference(a, [b]), intersection: intersection(a, b) };
    for (const kind of ["union", "difference", "intersection"] as const) {
      const fault = disagreement(found[kind], (c) => oracleBoolean(kind, a, b, c), chord);
      note(proof, kind, seed, fault && `${family}: ${fault}`);
    }
  }
  return proof;
}

/** Every place on a moved boundary lies the distance from the one it came from, by the exact curves; sampled. */
export function strayFrom(region: Region, distance: number, found: readonly Region[]): string | undefined {
  const source = [region.outer, ...region.holes];
  for (const loop of found.flatMap((r) => [r.outer, ...r.holes])) {
    for (let i = 0; i < loop.length; i++) {
      for (const p of [loop[i]!, midpoint(loop[i]!, loop[(i + 1) % loop.length]!)]) {
        const away = source.reduce((least, s) => Math.min(least, nearestOn(s, p)!.distance), Number.POSITIVE_INFINITY);
        if (Math.abs(away - Math.abs(distance)) > 1e-5) return `a place lies ${away} from the source`;
      }
    }
  }
  return undefined;
}

function note(proof: Proof, family: string, seed: number, fault: string | undefined): void {
  proof.tried[family] = (proof.tried[family] ?? 0) + 1;
  if (fault !== undefined) proof.faults.push(`seed ${seed}, ${family}: ${fault}`);
}
