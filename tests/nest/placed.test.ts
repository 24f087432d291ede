import { describe, expect, it } from "vitest";
import { identity } from "../../src/geometry/frame.js";
import type { Point, Profile, Region } from "../../src/geometry/profile.js";
import type { Placed } from "../../src/model/build.js";
import { boardId, partId, pieceId } from "../../src/model/ids.js";
import type { Part } from "../../src/model/part.js";
import { toSheet } from "../../src/nest/placed.js";

const profile = (...points: readonly (readonly [number, number, number?])[]): Profile =>
  points.map(([x, y, bulge = 0], i) => ({ x, y, bulge, by: `side.${i + 1}` }));

/** A 40 x 20 plate with its lower left corner at (10, 5), a half disc bulging from its right side, a small hole. */
const plate: Region = {
  outer: profile([10, 5], [50, 5, 1], [50, 25], [10, 25]),
  holes: [profile([15, 10], [20, 10], [20, 12])],
};

const part = (blank: Region): Part => ({
  id: partId(pieceId("plate"), "board"),
  number: "P1",
  piece: pieceId("plate"),
  role: "board",
  from: [],
  board: boardId("plate"),
  thickness: 12,
  features: [],
  profile: blank,
  blank,
  edges: {},
  coverings: {},
  at: identity,
});

const lies = (turn: number, backUp: boolean, x = 0, y = 0): Placed => ({ part: part(plate).id, x, y, turn, backUp });

/** The shoelace area plus the half disc: positive only when the profile runs counter-clockwise. */
function signedArea(p: Profile): number {
  const chords = p.reduce((sum, v, i) => sum + v.x * at(p, i + 1).y - v.y * at(p, i + 1).x, 0) / 2;
  const halfDiscs = p.reduce((sum, v, i) => {
    const d = Math.hypot(at(p, i + 1).x - v.x, at(p, i + 1).y - v.y);
    return sum + (Math.sign(v.bulge) * Math.PI * d * d) / 8;
  }, 0);
  return chords + halfDiscs;
}
const at = (p: Profile, i: number) => p[i % p.length]!;

const near = (p: Point, x: number, y: number) => {
  expect(p.x).toBeCloseTo(x, 9);
  expect(p.y).toBeCloseTo(y, 9);
};

describe("a part laid on its sheet", () => {
  it("has the lower left corner of its blank's extents where the layout says", () => {
    near(toSheet(part(plate), lies(0, false, 100, 200)).point({ x: 10, y: 5 }), 100, 200);
    // a quarter turn to the left: the half disc (10 beyond the 40) points up, the side at y = 25 comes to the left
    near(toSheet(part(plate), lies(Math.PI / 2, false, 100, 200)).point({ x: 10, y: 25 }), 100, 200);
    // half a turn: the half disc now touches the left end of the extents
    near(toSheet(part(plate), lies(Math.PI, false)).point({ x: 60, y: 15 }), 0, 10);
  });

  it("is mirrored left to right when its back is up, and then turned", () => {
    const backUp = toSheet(part(plate), lies(0, true, 0, 0));
    near(backUp.point({ x: 60, y: 15 }), 0, 10);
    near(backUp.point({ x: 10, y: 5 }), 50, 0);
    const turnedToo = toSheet(part(plate), lies(Math.PI / 2, true, 0, 0));
    // mirrored, the half disc points left; a quarter turn to the left sends it down
    near(turnedToo.point({ x: 60, y: 15 }), 10, 0);
    near(turnedToo.point({ x: 10, y: 5 }), 20, 50);
  });

  it("keeps area, direction of travel, arcs and the names of its edges in every turn, both ways up", () => {
    for (const backUp of [false, true])
      for (const turn of [0, Math.PI / 2, Math.PI, (3 * Math.PI) / 2, 0.4]) {
        const laid = toSheet(part(plate), lies(turn, backUp, 7, 9)).region(plate);
        expect(signedArea(laid.outer)).toBeCloseTo(800 + 50 * Math.PI, 6);
        expect(signedArea(laid.holes[0]!)).toBeCloseTo(5, 6);
        const i = laid.outer.findIndex((v) => v.bulge !== 0);
        expect(laid.outer[i]!.by).toBe("side.2");
        expect(
          Math.hypot(laid.outer[i]!.x - at(laid.outer, i + 1).x, laid.outer[i]!.y - at(laid.outer, i + 1).y),
        ).toBeCloseTo(20, 9);
      }
  });

  it("keeps a path's direction and turns its arcs the other way when the back is up", () => {
    const path = profile([10, 5, 0.3], [30, 5], [30, 20]);
    const laid = toSheet(part(plate), lies(0, true)).path(path);
    near(laid[0]!, 50, 0);
    expect(laid.map((v) => v.bulge)).toEqual([-0.3, 0, 0]);
    expect(laid.map((v) => v.by)).toEqual(["side.1", "side.2", "side.3"]);
  });

  it("turns by a quarter without changing a size in its last digit", () => {
    const odd: Region = { outer: profile([0, 0], [333.3, 0], [333.3, 0.1], [0, 0.1]), holes: [] };
    const laid = toSheet(part(odd), { ...lies(Math.PI / 2, false), x: 0, y: 0 }).region(odd);
    expect(Math.max(...laid.outer.map((v) => v.y))).toBe(333.3);
  });
});
