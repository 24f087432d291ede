import { describe, expect, it } from "vitest";
import { directionAtEnd, directionAtStart } from "../../src/geometry/arc.js";
import { biarc, fitBiarcs } from "../../src/geometry/biarc.js";
import { nearestOnPath } from "../../src/geometry/distance.js";
import type { Path } from "../../src/geometry/profile.js";

const at = (x: number, y: number) => ({ x, y });

function sharpest(path: Path): number {
  let worst = 0;
  for (let i = 1; i + 1 < path.length; i++) {
    const u = directionAtEnd(path[i - 1]!, path[i]!);
    const v = directionAtStart(path[i]!, path[i + 1]!);
    worst = Math.max(worst, Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y)));
  }
  return worst;
}

describe("two arcs between directions", () => {
  it("leave and arrive in them and run into each other smoothly", () => {
    for (let k = 0; k < 40; k++) {
      const u = at(Math.cos(k * 0.05 - 1), Math.sin(k * 0.05 - 1));
      const v = at(Math.cos(1.2 - k * 0.06), Math.sin(1.2 - k * 0.06));
      const path = [...biarc(at(0, 0), u, at(100, 20), v, "b"), { x: 100, y: 20, bulge: 0, by: "b" }];
      expect(path).toHaveLength(3);
      const leave = directionAtStart(path[0]!, path[1]!);
      const arrive = directionAtEnd(path[1]!, path[2]!);
      expect(Math.hypot(leave.x - u.x, leave.y - u.y)).toBeLessThan(1e-9);
      expect(Math.hypot(arrive.x - v.x, arrive.y - v.y)).toBeLessThan(1e-9);
      expect(sharpest(path)).toBeLessThan(1e-9);
    }
  });
});

describe("arcs through measured points", () => {
  const wave = Array.from({ length: 41 }, (_, i) => at(i * 10, 30 * Math.sin(i / 6)));

  it("pass through every point, smoothly, when no deviation is allowed", () => {
    const { path, deviation } = fitBiarcs(wave, { within: 0, by: "edge" });
    expect(deviation).toBeLessThan(1e-9);
    expect(sharpest(path)).toBeLessThan(1e-9);
    expect(path.every((v) => v.by === "edge")).toBe(true);
  });

  it("become few when one is, and say how far they stand off", () => {
    const { path, deviation } = fitBiarcs(wave, { within: 0.2, by: "edge" });
    expect(deviation).toBeLessThanOrEqual(0.2);
    expect(deviation).toBeGreaterThan(0);
    expect(deviation).toBe(Math.max(...wave.map((p) => nearestOnPath(path, p)!.distance)));
    expect(path.length).toBeLessThan(25);
    expect(sharpest(path)).toBeLessThan(1e-9);
  });

  it("find the circle that points were measured on, and close it", () => {
    const round = Array.from({ length: 12 }, (_, i) =>
      at(80 * Math.cos(i * (Math.PI / 6)), 80 * Math.sin(i * (Math.PI / 6))),
    );
    const { path } = fitBiarcs(round, { within: 0.001, by: "edge", closed: true });
    expect(path[path.length - 1]).toMatchObject({ x: 80, y: 0 });
    for (const v of path) expect(Math.hypot(v.x, v.y)).toBeCloseTo(80, 6);
    expect(sharpest(path)).toBeLessThan(1e-6);
  });

  it("leave a straight run straight and a corner a corner", () => {
    const bend = [at(0, 0), at(10, 0), at(25, 0), at(40, 0), at(40, 12), at(40, 30)];
    const { path, deviation } = fitBiarcs(bend, { within: 0.01, by: "edge" });
    expect(deviation).toBeLessThan(1e-9);
    expect(path.map(({ x, y, bulge }) => [x, y, bulge])).toEqual([
      [0, 0, 0],
      [40, 0, 0],
      [40, 30, 0],
    ]);
  });
});
