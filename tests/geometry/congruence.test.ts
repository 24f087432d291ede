import { expect, it } from "vitest";
import { congruence } from "../../src/geometry/congruence.js";
import { fillet } from "../../src/geometry/corners.js";
import type { Profile, Region } from "../../src/geometry/profile.js";
import { circle, polygon, rectangle } from "../../src/geometry/shapes.js";
import { mirrorRegion, moveRegion, turnRegion } from "../../src/geometry/transform.js";

const at = (x: number, y: number) => ({ x, y });
const handed: Region = {
  outer: polygon([at(0, 0), at(100, 0), at(100, 60), at(40, 60), at(40, 40), at(0, 40)], (i) => `e${i}`),
  holes: [circle(at(80, 20), 6, "hole")],
};

it("finds the turn of a part that was turned and moved, with its loops started elsewhere", () => {
  for (const angle of [0, 0.3, 1.7, 3, -2.2]) {
    const there = moveRegion(turnRegion(handed, angle), 30, -70);
    const startAt = (loop: Profile, first: number) => [...loop.slice(first), ...loop.slice(0, first)];
    const restarted = { outer: startAt(there.outer, 2), holes: there.holes.map((hole) => startAt(hole, 1)) };
    const found = congruence(handed, restarted);
    expect(found?.mirrored).toBe(false);
    expect(found?.turn).toBeCloseTo(angle, 9);
    const laid = moveRegion(turnRegion(handed, found!.turn), found!.move.x, found!.move.y);
    laid.outer.forEach((p, i) => {
      expect(p.x).toBeCloseTo(there.outer[i]!.x, 9);
      expect(p.y).toBeCloseTo(there.outer[i]!.y, 9);
    });
  }
});

it("tells an opposite hand from the same one", () => {
  const other = turnRegion(mirrorRegion(handed), 1);
  expect(congruence(handed, other)).toMatchObject({ mirrored: true, turn: expect.closeTo(1, 9) });
  expect(congruence(handed, handed)).toEqual({
    mirrored: false,
    turn: 0,
    move: { x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) },
  });
});

it("sees the hole that stands in another place, and the one that is larger", () => {
  const holed = (x: number, y: number, r: number): Region => ({ ...handed, holes: [circle(at(x, y), r, "hole")] });
  expect(congruence(handed, holed(80, 21, 6))).toBeUndefined();
  expect(congruence(handed, holed(80, 20, 6.1))).toBeUndefined();
  expect(congruence(handed, holed(80.005, 20, 6))).toBeDefined();
});

it("turns a ring by its bolt holes, and a bare ring not at all", () => {
  const bolts = (n: number, from: number): Region => ({
    outer: circle(at(0, 0), 100, "out"),
    holes: Array.from({ length: n }, (_, k) =>
      circle(at(80 * Math.cos(from + (2 * Math.PI * k) / n), 80 * Math.sin(from + (2 * Math.PI * k) / n)), 3, "bolt"),
    ),
  });
  expect(congruence(bolts(6, 0), bolts(6, 0.2))?.turn).toBeCloseTo(0.2, 9);
  const bare = { outer: circle(at(0, 0), 100, "out"), holes: [circle(at(0, 0), 90, "in")] };
  expect(congruence(bare, turnRegion(bare, 1))?.turn).toBe(0);
});

it("looks through edges that are cut up and through seams of arcs", () => {
  const plate = { outer: rectangle(0, 0, 80, 50, "a"), holes: [] };
  const cut = { outer: polygon([at(0, 0), at(30, 0), at(80, 0), at(80, 50), at(0, 50)], (i) => `c${i}`), holes: [] };
  expect(congruence(plate, cut)?.turn).toBeCloseTo(0, 9);
  const round = { outer: fillet(plate.outer, 10).profile, holes: [] };
  expect(congruence(round, turnRegion(round, 2))).toMatchObject({ mirrored: false });
  expect(congruence(round, plate)).toBeUndefined();
});
