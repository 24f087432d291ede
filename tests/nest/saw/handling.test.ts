import { describe, expect, it } from "vitest";
import type { BevelCut, PieceSide, RipCut } from "../../../src/model/rip.js";
import { type Way, wayFor } from "../../../src/nest/saw/handling.js";
import type { Sawing } from "../../../src/nest/saw/sawing.js";
import { replay } from "./cutter.js";

const sawing: Sawing = {
  table: { kerf: 3.2, reach: 660, crossCut: 650, length: 2440, width: 650 },
  track: { kerf: 2.4, longest: 2700 },
  hold: { length: 300, width: 50 },
  step: 0.5,
  setting: 0.01,
};
const { track: _, ...bare } = sawing;
const way = (run: number, across: number, size: number, by: Sawing = sawing): Way => wayFor(run, across, size, by);

describe("the saw for a cut", () => {
  it("is the track while one person does not bring the piece to the table", () => {
    expect(way(2440, 1220, 150)).toMatchObject({ saw: "track", kerf: 2.4 });
    expect(way(2440, 650, 150)).toMatchObject({ saw: "table", way: "rip", kerf: 3.2 });
  });

  it("has the longer side along the fence, and what is cut across it on the sled", () => {
    expect(way(600, 400, 150).way).toBe("rip");
    expect(way(400, 600, 150).way).toBe("cross-cut");
    // too wide for the sled: the fence serves while more lies along it than beside it
    expect(way(660, 800, 500, bare).way).toBe("rip");
    expect(way(660, 800, 661, bare)).toMatchObject({ trouble: "reach" });
  });

  it("may be the sled too for a rip of a piece that lies well along it", () => {
    expect(way(500, 445, 300)).toMatchObject({ way: "rip", sledToo: true });
    // too long a cut; too little of it at the sled's fence
    expect(way(651, 445, 300).sledToo).toBeUndefined();
    expect(way(500, 299, 100).sledToo).toBeUndefined();
    expect(way(400, 600, 150).sledToo).toBeUndefined();
  });

  it("says where a piece is too small to hold, and where no saw reaches", () => {
    expect(way(299, 60, 50)).toMatchObject({ trouble: "small" });
    expect(way(300, 50, 40).trouble).toBeUndefined();
    expect(way(2440, 1220, 661, bare)).toMatchObject({ trouble: "reach" });
    expect(way(2440, 1220, 660, bare).trouble).toBeUndefined();
  });
});

describe("the cutter that follows a list", () => {
  const cut: RipCut = {
    number: 1,
    sheet: "one 1",
    saw: "table",
    way: "rip",
    along: true,
    setting: 100,
    kerf: 3.2,
    fresh: true,
    piece: { name: "one 1", x: 0, y: 0, length: 400, width: 203.2, becomes: "cut" },
    off: { name: "1a", x: 0, y: 0, length: 400, width: 100, becomes: "left" },
    rest: { name: "1b", x: 0, y: 103.2, length: 400, width: 100, becomes: "left" },
  };
  const room = { thickness: 18, step: 0.5, kerfs: { table: 3.2, track: 2.4 }, heldLength: 300, heldWidth: 50 };
  const faults = (cuts: readonly RipCut[]) =>
    replay({ cuts, bevels: [] }, new Map([["one 1", { length: 400, width: 203.2 }]]), room).faults;

  it("finds nothing wrong with a sound one", () => {
    expect(faults([cut])).toEqual([]);
  });

  it("notices a kerf forgotten, a piece cut twice, one that is not there and a fence that was never set", () => {
    expect(faults([{ ...cut, kerf: 0 }])).not.toEqual([]);
    expect(faults([cut, { ...cut, number: 2 }])).toEqual(["cut 2: one 1 is cut twice"]);
    expect(faults([{ ...cut, piece: { ...cut.piece, name: "2b" } }])).toEqual(["cut 1: there is no 2b"]);
    expect(faults([{ ...cut, fresh: false }]).length).toBeGreaterThan(0);
  });

  it("notices a cut that the saw does not take, and a piece that nobody brings to it", () => {
    const taken = (more: object) =>
      replay({ cuts: [cut], bevels: [] }, new Map([["one 1", { length: 400, width: 203.2 }]]), { ...room, ...more })
        .faults;
    expect(taken({ reach: 100, sled: 10, onePerson: { length: 400, width: 204 } })).toEqual([]);
    expect(taken({ reach: 99 })).toEqual(["cut 1: the fence does not reach 100"]);
    expect(taken({ onePerson: { length: 399, width: 204 } }).length).toBe(1);
  });

  it("notices a size that is not what comes off, and a piece too small to hold", () => {
    expect(faults([{ ...cut, off: { ...cut.off!, width: 101 } }])).toEqual([
      "cut 1: 1a measures 400 x 100, not 400 x 101",
    ]);
    const short = {
      ...cut,
      piece: { ...cut.piece, length: 200 },
      off: { ...cut.off!, length: 200 },
      rest: { ...cut.rest!, length: 200 },
    };
    expect(
      replay({ cuts: [short], bevels: [] }, new Map([["one 1", { length: 200, width: 203.2 }]]), room).faults,
    ).toEqual(["cut 1: 200 x 203.2 is too small to hold"]);
  });

  it("notices a bevel at the wrong setting, of a piece too small, on a side that is bevelled already, and a blade left leaning", () => {
    const bevel = {
      number: 1,
      sheet: "one 1",
      saw: "table",
      way: "rip",
      tilt: Math.PI / 4,
      setting: 203.2 - 18,
      run: 400,
      across: 203.2,
      less: 18,
      fresh: true,
      edges: [],
      side: "upper",
      down: "under",
      piece: cut.piece,
    } as const satisfies BevelCut;
    const upright = { ...cut, number: 2, upright: true } as const;
    const told = (cuts: readonly RipCut[], bevels: readonly BevelCut[], length = 400) =>
      replay({ cuts, bevels }, new Map([["one 1", { length, width: 203.2 }]]), room).faults;
    expect(told([upright], [bevel])).toEqual([]);
    expect(told([{ ...cut, number: 2 }], [bevel])).toEqual(["cut 2: is cut with the blade still leaning"]);
    expect(told([upright], [{ ...bevel, setting: 203.2 }]).length).toBe(1);
    const short = { ...bevel, run: 299, piece: { ...cut.piece, length: 299 } };
    expect(told([], [short], 299)).toEqual(["cut 1: 299 x 203.2 is too small to hold"]);
    const again = (side: PieceSide): BevelCut => ({ ...bevel, number: 2, fresh: false, side });
    expect(told([], [bevel, again("upper")])).toEqual(["cut 2: its upper side is bevelled already"]);
    expect(told([], [bevel, again("lower")])).toEqual([]);
  });
});
