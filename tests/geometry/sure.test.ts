import { describe, expect, it } from "vitest";
import { fillet } from "../../src/geometry/corners.js";
import { profileFaults, regionFaults } from "../../src/geometry/faults.js";
import { areaOfRegion } from "../../src/geometry/measure.js";
import { polygonBoolean, polygonOffset } from "../../src/geometry/polygonAnswer.js";
import type { Profile } from "../../src/geometry/profile.js";
import { againstTheClock, circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { sureDifference, sureIntersection, sureOffset, sureUnion } from "../../src/geometry/sure.js";

const at = (x: number, y: number) => ({ x, y });
const solid = (outer: Profile) => ({ outer, holes: [] });
const bowTie = polygon([at(0, 0), at(10, 10), at(10, 0), at(0, 8)], "e");

describe("the guard", () => {
  const plate = solid(rectangle(0, 0, 300, 200, "plate"));
  const disc = (x: number, y: number, r: number) => solid(circle(at(x, y), r, "hole"));

  it("lets through what both methods agree on", () => {
    const cut = sureDifference(plate, [disc(100, 100, 40), disc(300, 200, 25), disc(120, 100, 40)]);
    expect(cut.doubt).toBeUndefined();
    expect(cut.value).toHaveLength(1);
    expect(sureUnion([plate, disc(300, 100, 50)]).value).toHaveLength(1);
    expect(areaOfRegion(sureIntersection(plate, disc(300, 200, 40)).value![0]!)).toBeCloseTo(400 * Math.PI, 6);
    expect(sureOffset(plate, -6).value).toHaveLength(1);
    expect(sureOffset(plate, -150).value).toEqual([]);
    expect(sureOffset(plate, (by) => (by === "plate" ? -3 : 0)).value).toHaveLength(1);
  });

  it("sees the loss of the smallest hole that a plate has, an M5 clearance hole of 5.5", () => {
    const holes = Array.from({ length: 20 }, (_, i) => disc(20 + (i % 5) * 60, 20 + Math.floor(i / 5) * 50, 2.75));
    const speaker = disc(150, 95, 22);
    expect(polygonBoolean("difference", [plate], [...holes, speaker]).allowed).toBeLessThan(Math.PI * 2.75 ** 2);
    expect(polygonOffset(solid(fillet(plate.outer, 12).profile), -6, "round").allowed).toBeLessThan(
      Math.PI * 2.75 ** 2,
    );
  });

  it("refuses what is no shape, and names the place", () => {
    expect(sureUnion([solid(bowTie)]).doubt?.what).toBe("crosses-itself");
    const holed = (...holes: Profile[]) => ({ outer: plate.outer, holes });
    expect(sureOffset(holed(circle(at(400, 300), 9, "h")), 3).doubt).toEqual({
      what: "hole-outside",
      at: at(391, 300),
    });
    expect(sureOffset(holed(circle(at(300, 50), 9, "h")), 3).doubt?.what).toBe("hole-outside");
    expect(sureUnion([solid(polygon([at(0, 0), at(9, 0)], "e"))]).doubt?.what).toBe("no-area");
    expect(sureDifference(plate, [solid([])]).doubt?.what).toBe("no-area");
    expect(sureOffset(plate, Number.NaN).doubt?.what).toBe("not-a-number");
    expect(sureOffset(plate, () => Number.POSITIVE_INFINITY).doubt?.what).toBe("not-a-number");
    const endless = solid([...plate.outer.slice(0, 3), { x: Number.POSITIVE_INFINITY, y: 3, bulge: 0, by: "plate" }]);
    for (const ask of [sureOffset(endless, -3), sureUnion([endless]), sureIntersection(plate, endless)])
      expect(ask.doubt?.what).toBe("not-a-number");
    const torn = solid([...plate.outer.slice(0, 3), { x: Number.NaN, y: 3, bulge: 0, by: "plate" }]);
    expect(sureOffset(torn, 3)).toMatchObject({ doubt: { what: "not-a-number" } });
  });
});

describe("faults", () => {
  it("finds the place where a profile crosses itself", () => {
    const [fault, ...more] = profileFaults(bowTie);
    expect(more).toEqual([]);
    // the lines y = x and y = 8 (10 - x) / 10
    expect(fault).toEqual({
      kind: "crosses-itself",
      at: { x: expect.closeTo(40 / 9, 9), y: expect.closeTo(40 / 9, 9) },
    });
    const arcThrough: Profile = [
      { x: 0, y: 0, bulge: 0, by: "e" },
      { x: 10, y: 0, bulge: 0, by: "e" },
      { x: 10, y: 5, bulge: 1.2, by: "e" },
      { x: 0, y: 5, bulge: -1.2, by: "e" },
    ];
    expect(profileFaults(arcThrough).map((f) => f.kind)).toEqual(["crosses-itself"]);
  });

  it("names repeated points, no area, the wrong way round and what is not a number", () => {
    const plate = rectangle(0, 0, 30, 20, "e");
    expect(profileFaults(plate)).toEqual([]);
    expect(profileFaults(circle(at(3, 3), 5, "c"))).toEqual([]);
    expect(profileFaults([...plate, { x: 0, y: 20, bulge: 0, by: "e" }])).toEqual([
      { kind: "repeated-point", at: at(0, 20) },
    ]);
    expect(profileFaults(polygon([at(0, 0), at(5, 0), at(10, 0)], "e")).map((f) => f.kind)).toEqual(["no-area"]);
    expect(profileFaults(againstTheClock(plate)).map((f) => f.kind)).toEqual(["clockwise"]);
    expect(profileFaults([...plate, { x: 0, y: 10, bulge: Number.NaN, by: "e" }]).map((f) => f.kind)).toEqual([
      "not-a-number",
    ]);
    expect(profileFaults([]).map((f) => f.kind)).toEqual(["too-few-vertices"]);
  });

  it("finds a hole that reaches out of its outer, not one that touches it", () => {
    const outer = rectangle(0, 0, 30, 20, "e");
    expect(regionFaults({ outer, holes: [rectangle(5, 5, 10, 10, "h")] })).toEqual([]);
    expect(regionFaults({ outer, holes: [rectangle(0, 5, 10, 10, "h")] })).toEqual([]);
    expect(regionFaults({ outer, holes: [rectangle(25, 5, 35, 10, "h")] }).map((f) => f.kind)).toEqual([
      "hole-outside",
    ]);
  });
});
