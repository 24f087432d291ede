import { describe, expect, it } from "vitest";
import { difference, intersection, union } from "../../src/geometry/boolean.js";
import { congruence } from "../../src/geometry/congruence.js";
import { chamferCorners, fillet, relieve } from "../../src/geometry/corners.js";
import { distanceBetween } from "../../src/geometry/distance.js";
import { profileFaults, regionFaults } from "../../src/geometry/faults.js";
import { pointInRegion } from "../../src/geometry/inside.js";
import { insideCorners } from "../../src/geometry/insideCorners.js";
import { areaOfRegion, centroidOf, extentsOf, lengthOf } from "../../src/geometry/measure.js";
import { offsetEach, offsetRegion, widen } from "../../src/geometry/offset.js";
import { offsetPath } from "../../src/geometry/offsetPath.js";
import { clipPath } from "../../src/geometry/path.js";
import type { Region } from "../../src/geometry/profile.js";
import { rectangle } from "../../src/geometry/shapes.js";
import { sureDifference, sureOffset, sureUnion } from "../../src/geometry/sure.js";
import { mirrorRegion, moveRegion, turnRegion } from "../../src/geometry/transform.js";
import { broken, corpus } from "./support/corpus.js";
import { disagreement, oracleBoolean, oracleOffset } from "./support/oracle.js";
import { strayFrom } from "./support/proof.js";

const chord = 1e-3;
const area = (regions: readonly Region[]) => regions.reduce((sum, region) => sum + areaOfRegion(region), 0);

describe.each(corpus)("$name", ({ region }) => {
  it("has no fault", () => {
    expect(regionFaults(region).filter((fault) => fault.kind !== "repeated-point")).toEqual([]);
  });

  it.each([6, -6, 0.5, -0.5, 3, -3, 20, -20])("moved by %d is what the polygon library says", (distance) => {
    const found = offsetRegion(region, distance);
    expect(strayFrom(region, distance, found)).toBeUndefined();
    expect(disagreement(found, (c) => oracleOffset(region, distance, "round", c), chord)).toBeUndefined();
    expect(sureOffset(region, distance).doubt).toBeUndefined();
  });

  it("joined with, cut by and cut out of itself moved, mirrored and turned is what the polygon library says", () => {
    const width = extentsOf(region).max.x - extentsOf(region).min.x;
    const others = [region, moveRegion(region, width / 2, 0), moveRegion(region, width, 0), mirrorRegion(region)];
    for (const other of [...others, turnRegion(region, Math.PI / 2), turnRegion(region, 0.01)]) {
      const found = {
        union: union([region, other]),
        difference: difference(region, [other]),
        intersection: intersection(region, other),
      };
      for (const kind of ["union", "difference", "intersection"] as const) {
        expect(disagreement(found[kind], (c) => oracleBoolean(kind, region, other, c), chord)).toBeUndefined();
      }
      expect(area(found.difference) + area(found.intersection)).toBeCloseTo(areaOfRegion(region), 3);
      expect(sureUnion([region, other]).doubt).toBeUndefined();
      expect(sureDifference(region, [other]).doubt).toBeUndefined();
    }
  });

  it("is found again after a turn and in a mirror", () => {
    expect(congruence(region, moveRegion(turnRegion(region, 0.8), 5, 9))).toBeDefined();
    expect(congruence(region, turnRegion(mirrorRegion(region), 2))).toBeDefined();
  });

  it("takes corners that it has room for, and says which not", () => {
    for (const work of [fillet, chamferCorners]) {
      const { profile } = work(region.outer, 0.4);
      expect(profileFaults(profile).filter((fault) => fault.kind !== "repeated-point")).toEqual([]);
    }
    const { profile, refused } = relieve(region.outer, 2, "diagonal");
    expect(profileFaults(profile).filter((fault) => fault.kind !== "repeated-point")).toEqual([]);
    expect(refused.length).toBeLessThanOrEqual(region.outer.length);
  });

  it("splits a line into what lies inside and outside", () => {
    const box = extentsOf(region);
    const y = (box.min.y + box.max.y) / 2 + 0.123;
    const line = [
      { x: box.min.x - 10, y, bulge: 0, by: "line" },
      { x: box.max.x + 10, y, bulge: 0, by: "line" },
    ];
    const inside = clipPath(line, false, [region], "inside");
    const outside = clipPath(line, false, [region], "outside");
    const length = [...inside, ...outside].reduce((sum, run) => sum + Math.abs(run[run.length - 1]!.x - run[0]!.x), 0);
    expect(length).toBeCloseTo(box.max.x - box.min.x + 20, 6);
    for (const run of inside) {
      expect(pointInRegion(region, { x: (run[0]!.x + run[run.length - 1]!.x) / 2, y })).toBe(true);
    }
  });
});

describe.each(broken)("$name", ({ region }) => {
  it("neither throws nor hangs in any operation, and is named or made a shape", () => {
    const plate = { outer: rectangle(-5, -5, 25, 7, "plate"), holes: [] };
    const regions = [
      ...[3, -3, 0, Number.NaN].flatMap((d) => offsetRegion(region, d)),
      ...union([region, plate]),
      ...difference(plate, [region]),
      ...difference(region, [plate]),
      ...intersection(region, plate),
    ];
    for (const found of regions) expect(regionFaults(found)).toEqual([]);
    offsetEach(region.outer, (by) => (by === "e1" ? 2 : -1), { corners: "sharp" });
    widen(region.outer, 2);
    offsetPath(region.outer, 2);
    clipPath(region.outer, true, [plate], "outside");
    fillet(region.outer, 1);
    chamferCorners(region.outer, 1);
    relieve(region.outer, 1, "side");
    insideCorners(region);
    congruence(region, region);
    distanceBetween(region, plate);
    centroidOf(region);
    lengthOf(region.outer);
    expect(regionFaults(region).length > 0 || sureUnion([region]).value !== undefined).toBe(true);
  });
});
