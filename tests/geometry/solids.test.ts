import { describe, expect, it } from "vitest";
import { type Frame, identity, place, shifted } from "../../src/geometry/frame.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { loadSolids } from "../../src/geometry/solids.js";

const solids = await loadSolids();
const leaning: Frame = { origin: [310, -40, 25.4], quat: [0.1, 0.3, -0.5, Math.sqrt(1 - 0.01 - 0.09 - 0.25)] };
const board = { outer: rectangle(0, 0, 400, 300, "side"), holes: [] };
const holed = { ...board, holes: [circle({ x: 200, y: 150 }, 100, "hole")] };

/** Area of a circle's inscribed polygon is less than the circle's by 2/3 of the chord error along its whole length. */
const polygonLoss = 2 * Math.PI * 100 * 0.01;

describe("solids", () => {
  it("are loaded once", async () => {
    expect(await loadSolids()).toBe(solids);
  });

  it("hang a board below its face", () => {
    const block = solids.within(() => solids.extentsOf(solids.extrude(board, 18, shifted(10, 20, 30))));
    expect(block).toEqual({ min: [10, 20, 12], max: [410, 320, 30] });
  });

  it("give a board the volume of its region times its thickness, however it is turned", () => {
    const area = 400 * 300 - Math.PI * 100 ** 2;
    for (const at of [identity, leaning]) {
      const volume = solids.within(() => solids.volumeOf(solids.extrude(holed, 18.2, at)));
      expect(Math.abs(volume - area * 18.2)).toBeLessThan(polygonLoss * 18.2);
    }
    expect(solids.within(() => solids.volumeOf(solids.extrude(board, 18.2, leaning)))).toBeCloseTo(400 * 300 * 18.2, 5);
  });

  it("measure extents along a frame's own axes", () => {
    const block = solids.within(() => solids.extentsOf(solids.extrude(board, 18, leaning), leaning));
    block!.min.forEach((value, axis) => {
      expect(value).toBeCloseTo([0, 0, -18][axis]!, 9);
    });
    block!.max.forEach((value, axis) => {
      expect(value).toBeCloseTo([400, 300, 0][axis]!, 9);
    });
  });

  it("give a frustum the volume pi h (R2 + R r + r2) / 3, either way up", () => {
    // the worked figure 120, 50, 100 -> 2.398 L, computed
    const [R, r, h] = [120, 50, 100];
    const exact = (Math.PI * h * (R * R + R * r + r * r)) / 3;
    expect(exact / 1e6).toBeCloseTo(2.398, 3);
    const up = solids.within(() => solids.volumeOf(solids.cone(2 * R, 2 * r, 0, h, leaning)));
    const down = solids.within(() => solids.volumeOf(solids.cone(2 * R, 2 * r, 0, -h, leaning)));
    expect(Math.abs(up / exact - 1)).toBeLessThan(3e-4);
    expect(down).toBeCloseTo(up, 3);
  });

  it("put the wide end of a frustum where it was asked for", () => {
    const reach = (from: number, to: number) =>
      solids.within(() => {
        const cone = solids.cone(200, 100, from, to, identity);
        const low = solids.box(
          { min: [-200, -200, Math.min(from, to)], max: [200, 200, Math.min(from, to) + 1] },
          identity,
        );
        return solids.extentsOf(solids.intersection(cone, low))!.max[0];
      });
    expect(reach(0, 90)).toBeCloseTo(100, 6);
    expect(reach(0, -90)).toBeLessThan(51);
  });

  it("add, take away and share volumes", () => {
    solids.within(() => {
      const a = solids.box({ min: [0, 0, 0], max: [10, 10, 10] }, identity);
      const b = solids.box({ min: [5, 0, 0], max: [15, 10, 10] }, identity);
      expect(solids.volumeOf(solids.union([a, b]))).toBeCloseTo(1500, 9);
      expect(solids.volumeOf(solids.difference(a, [b]))).toBeCloseTo(500, 9);
      expect(solids.volumeOf(solids.intersection(a, b))).toBeCloseTo(500, 9);
      expect(solids.isEmpty(solids.difference(a, [a]))).toBe(true);
      expect(solids.isEmpty(solids.union([]))).toBe(true);
      expect(solids.extentsOf(solids.union([]))).toBeUndefined();
    });
  });

  it("show a closed hollow as a skin of negative volume and an open one as none", () => {
    solids.within(() => {
      const outside = solids.box({ min: [0, 0, 0], max: [10, 10, 10] }, leaning);
      const inside = solids.box({ min: [1, 1, 1], max: [9, 9, 9] }, leaning);
      const closed = solids.difference(outside, [inside]);
      expect(solids.components(closed).map(solids.volumeOf)).toEqual([
        expect.closeTo(1000, 6),
        expect.closeTo(-512, 6),
      ]);
      const shaft = solids.box({ min: [4, 4, 5], max: [6, 6, 20] }, leaning);
      expect(solids.components(solids.difference(closed, [shaft]))).toHaveLength(1);
    });
  });

  it("tell a point inside from one outside, in a hollow skin too", () => {
    solids.within(() => {
      const ring = solids.extrude(holed, 18, leaning);
      expect(solids.contains(ring, place(leaning, [10, 10, -9]))).toBe(true);
      expect(solids.contains(ring, place(leaning, [200, 150, -9]))).toBe(false);
      expect(solids.contains(ring, place(leaning, [10, 10, 1]))).toBe(false);
    });
  });

  it("measure how deep two boards run into each other along the boards' own axes", () => {
    solids.within(() => {
      const a = solids.extrude(board, 18, leaning);
      const over: Frame = { origin: place(leaning, [0, 0, 17.5]), quat: leaning.quat };
      const shared = solids.overlap(a, solids.extrude(board, 18, over), [leaning, over]);
      expect(shared.depth).toBeCloseTo(0.5, 2);
      expect(shared.volume).toBeCloseTo(400 * 300 * 0.5, 3);
    });
  });

  it("call a sliver round a circle as thin as it is, though it reaches far every way", () => {
    solids.within(() => {
      const plate = solids.extrude(holed, 12, identity);
      const plug = solids.cylinder(200.1, -12, 0, shifted(200, 150, 0));
      const { depth, volume } = solids.overlap(plate, plug, [identity]);
      expect(depth).toBeGreaterThan(0.04);
      expect(depth).toBeLessThan(0.06);
      expect(volume).toBeGreaterThan(300);
    });
  });

  it("find nothing shared by a disc and the hole it just fits, though both are polygons", () => {
    solids.within(() => {
      const plate = solids.extrude(holed, 12, identity);
      for (const turn of [0, 0.001, 0.01]) {
        const at: Frame = { origin: [200, 150, 0], quat: [0, 0, Math.sin(turn / 2), Math.cos(turn / 2)] };
        expect(solids.overlap(plate, solids.cylinder(200, -12, 0, at), [identity]).depth).toBeLessThan(0.01);
      }
    });
  });

  it("are empty, and harm nothing, where an outline makes no board", () => {
    const places = [
      [],
      [{ x: 0, y: 0 }],
      [
        { x: 0, y: 0 },
        { x: 9, y: 0 },
      ],
      [
        { x: 0, y: 0 },
        { x: Number.NaN, y: 0 },
        { x: 9, y: 9 },
      ],
    ];
    solids.within(() => {
      const block = solids.box({ min: [0, 0, -9], max: [9, 9, 0] }, identity);
      const empties = [
        ...places.map((points) => solids.extrude({ outer: polygon(points, "side"), holes: [] }, 18, identity)),
        solids.extrude(board, 0, identity),
        solids.extrude(board, -5, identity),
        solids.cylinder(0, 0, 5, identity),
        solids.cylinder(10, 5, 5, identity),
      ];
      for (const empty of empties) {
        expect(solids.isEmpty(empty)).toBe(true);
        expect(solids.components(empty)).toEqual([]);
        expect(solids.overlap(block, empty, [identity])).toEqual({ volume: 0, depth: 0 });
        expect(solids.contains(empty, [1, 1, -1])).toBe(false);
      }
      expect(solids.volumeOf(block)).toBeCloseTo(729, 9);
    });
  });

  it("free what was made when the work throws, and refuse what has been freed", () => {
    let kept: ReturnType<typeof solids.box> | undefined;
    expect(() =>
      solids.within(() => {
        kept = solids.box({ min: [0, 0, 0], max: [1, 1, 1] }, identity);
        throw new Error("in the middle of it");
      }),
    ).toThrow("in the middle of it");
    expect(() => solids.within(() => solids.volumeOf(kept!))).toThrow(/after its `within`/);
    expect(() => solids.box({ min: [0, 0, 0], max: [1, 1, 1] }, identity)).toThrow(/outside `within`/);
  });

  it("let inner work use what outer work made, and give back only its own", () => {
    solids.within(() => {
      const outer = solids.box({ min: [0, 0, 0], max: [2, 2, 2] }, identity);
      const half = solids.within(() =>
        solids.volumeOf(solids.intersection(outer, solids.box({ min: [0, 0, 0], max: [1, 2, 2] }, identity))),
      );
      expect(half).toBeCloseTo(4, 12);
      expect(solids.volumeOf(outer)).toBeCloseTo(8, 12);
    });
  });

  it("hold no more memory after 10,000 operations than before", () => {
    const work = () =>
      solids.within(() => {
        solids.extrude(holed, 18, leaning);
        const a = solids.box({ min: [0, 0, 0], max: [9, 9, 9] }, leaning);
        const b = solids.cylinder(4, 0, 9, identity);
        for (let i = 0; i < 3; i++) solids.extentsOf(a, leaning);
        solids.components(b);
        solids.contains(b, [0, 0, 4]);
        solids.volumeOf(solids.intersection(a, b));
      });
    solids.within(() => {
      // Fill the kernel's memory until it has just had to grow, so that the next few megabytes are seen.
      const { external: empty } = process.memoryUsage();
      while (process.memoryUsage().external < empty + 1e6) solids.volumeOf(solids.extrude(holed, 18, leaning));
      for (let i = 0; i < 20; i++) work();
      const { external: before } = process.memoryUsage();
      // ten operations a round; the kernel's own extrude leaves some 10 kB a board behind, 10 MB in all
      for (let i = 0; i < 1000; i++) work();
      expect(process.memoryUsage().external - before).toBeLessThan(2e6);
    });
  });
});
