import { describe, expect, it } from "vitest";
import { fillet } from "../../src/geometry/corners.js";
import { areaOf, areaOfRegion, extentsOf, isCircle } from "../../src/geometry/measure.js";
import { offsetEach, offsetProfile, offsetRegion } from "../../src/geometry/offset.js";
import type { Profile } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";

const at = (x: number, y: number) => ({ x, y });
const names = ["bottom", "right", "top", "left"] as const;
const plate = rectangle(0, 0, 300, 200, names);
const edges = (profile: Profile) => profile.map((v) => v.by).sort();

describe("a plate moved by one distance", () => {
  it("outwards has its corners rounded, by arcs that bear both edges' names", () => {
    const [grown] = offsetProfile(plate, 6);
    // four strips beside the edges, four quarter discs at the corners
    expect(areaOf(grown!)).toBeCloseTo(300 * 200 + 2 * (300 + 200) * 6 + Math.PI * 6 ** 2, 8);
    expect(edges(grown!)).toEqual(
      ["bottom", "bottom|right", "left", "left|bottom", "right", "right|top", "top", "top|left"].sort(),
    );
    expect(grown!.filter((v) => v.bulge !== 0)).toHaveLength(4);
  });

  it("outwards with sharp corners is a larger plate", () => {
    const [grown] = offsetProfile(plate, 6, { corners: "sharp" });
    expect(extentsOf(grown!)).toEqual({ min: at(-6, -6), max: at(306, 206) });
    expect(edges(grown!)).toEqual([...names].sort());
  });

  it("inwards is a smaller one, down to nothing", () => {
    expect(offsetProfile(plate, -99.9).map(areaOf)).toEqual([expect.closeTo(100.2 * 0.2, 8)]);
    expect(offsetProfile(plate, -100)).toEqual([]);
    expect(offsetProfile(plate, -1000)).toEqual([]);
  });

  it("inwards by more than its corners' radius has sharp corners, and by less keeps the centres", () => {
    const round = fillet(plate, 10).profile;
    const [less] = offsetProfile(round, -4);
    expect(areaOf(less!)).toBeCloseTo(292 * 192 - (4 - Math.PI) * 36, 8);
    const [more] = offsetProfile(round, -15);
    expect(more).toHaveLength(4);
    expect(areaOf(more!)).toBeCloseTo(270 * 170, 8);
  });

  it("splits where a neck is narrower than twice the distance, and only there", () => {
    const rooms = polygon(
      [
        at(0, 0),
        at(40, 0),
        at(40, 14),
        at(60, 14),
        at(60, 0),
        at(100, 0),
        at(100, 40),
        at(60, 40),
        at(60, 26),
        at(40, 26),
        at(40, 40),
        at(0, 40),
      ],
      (i) => `e${i}`,
    );
    expect(offsetProfile(rooms, -5.99)).toHaveLength(1);
    expect(offsetProfile(rooms, -6)).toHaveLength(2);
    expect(offsetProfile(rooms, -6.01)).toHaveLength(2);
  });
});

describe("a region with holes", () => {
  it("keeps a ring round, wider or narrower, till its wall is gone", () => {
    const ring = { outer: circle(at(5, 5), 50, "out"), holes: [circle(at(5, 5), 38, "in")] };
    const [wide] = offsetRegion(ring, 4);
    expect(isCircle(wide!.outer)?.radius).toBeCloseTo(54, 9);
    expect(isCircle(wide!.holes[0]!)?.radius).toBeCloseTo(34, 9);
    expect(offsetRegion(ring, -6)).toEqual([]);
    expect(offsetRegion(ring, 38)[0]!.holes).toEqual([]);
  });

  it("lets holes that grow run together and break out at the edge", () => {
    const holed = {
      outer: rectangle(0, 0, 100, 60, "plate"),
      holes: [circle(at(30, 30), 10, "a"), circle(at(56, 30), 10, "b"), circle(at(88, 30), 8, "c")],
    };
    const [shrunk, ...more] = offsetRegion(holed, -3.5);
    expect(more).toEqual([]);
    expect(shrunk!.holes).toHaveLength(1);
    expect(new Set(shrunk!.outer.map((v) => v.by))).toEqual(new Set(["plate", "c"]));
  });

  it("leaves a hole where growth closes a bay", () => {
    const bay = polygon(
      [
        at(0, 0),
        at(80, 0),
        at(80, 60),
        at(46, 60),
        at(46, 50),
        at(70, 50),
        at(70, 10),
        at(10, 10),
        at(10, 50),
        at(34, 50),
        at(34, 60),
        at(0, 60),
      ],
      "bay",
    );
    const [grown] = offsetRegion({ outer: bay, holes: [] }, 7);
    expect(grown!.holes).toHaveLength(1);
    expect(areaOf(grown!.holes[0]!)).toBeGreaterThan(46 * 26 - 60);
    expect(offsetProfile(bay, 7)).toHaveLength(1);
  });
});

describe("a plate whose edges move by different distances", () => {
  const by = (distances: Record<string, number>) => (name: string) => distances[name] ?? 0;

  it("moves each edge's own line, in, out or not at all", () => {
    const [cut, ...more] = offsetEach(plate, by({ bottom: -3, top: 5, left: -1 }));
    expect(more).toEqual([]);
    expect(extentsOf(cut!)).toEqual({ min: at(1, 3), max: at(300, 205) });
    expect(areaOf(cut!)).toBeCloseTo(299 * 202, 9);
    expect(edges(cut!)).toEqual([...names].sort());
  });

  it("runs a covered edge out to a bare one that stands at a slant", () => {
    const wedge = polygon([at(0, 0), at(100, 0), at(130, 50), at(0, 50)], (i) => names[i]!);
    const [cut] = offsetEach(wedge, by({ bottom: -6 }));
    // the bare right edge stays on its line, 0.6 mm further out for every millimetre up
    expect(areaOf(cut!)).toBeCloseTo(((103.6 + 130) / 2) * 44, 9);
  });

  it("moves an edge in over a small chamfer that stays where it is", () => {
    const chamfered = polygon([at(0, 0), at(98, 0), at(100, 2), at(100, 50), at(0, 50)], (i) => `e${i}`);
    const [cut] = offsetEach(chamfered, by({ e0: -6 }));
    expect(areaOf(cut!)).toBeCloseTo(100 * 44, 9);
  });

  it("steps across where an edge runs smoothly into one that moves otherwise", () => {
    const round = fillet(plate, 20).profile;
    const [cut] = offsetEach(round, by({ bottom: -3 }));
    expect(areaOf(cut!)).toBeCloseTo(areaOf(round) - 260 * 3, 8);
    expect(cut!.map((v) => v.by)).toContain("left|bottom");
  });

  it("moves the edges of holes too, in the sense of the material", () => {
    const window = { outer: plate, holes: [rectangle(50, 50, 100, 100, ["sill", "jamb", "head", "jamb"])] };
    const [cut] = offsetRegion(window, by({ sill: -3, right: -2 }));
    expect(areaOfRegion(cut!)).toBeCloseTo(298 * 200 - 50 * 53, 8);
  });
});
