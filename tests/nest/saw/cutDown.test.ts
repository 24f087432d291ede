import { describe, expect, it } from "vitest";
import { areaOfRegion } from "../../../src/geometry/measure.js";
import type { Region } from "../../../src/geometry/profile.js";
import { circle, polygon } from "../../../src/geometry/shapes.js";
import { partId, pieceId } from "../../../src/model/ids.js";
import type { SawCut, SawnPiece } from "../../../src/model/rip.js";
import { fromRack } from "../../../src/nest/saw/cutDown.js";
import type { Sawing } from "../../../src/nest/saw/sawing.js";

const sawing: Sawing = {
  table: { kerf: 3, reach: 660, crossCut: 650, length: 2440, width: 650 },
  track: { kerf: 2, longest: 2700 },
  hold: { length: 300, width: 50 },
  step: 0.5,
  setting: 0.01,
};

/** A board on its true edge, the rectangle's corner at 0, 0. */
function board(...points: readonly (readonly [number, number])[]): Region {
  const outer = polygon(
    points.map(([x, y]) => ({ x, y })),
    (i) => (i === 0 ? "factory" : `side.${i}`),
  );
  return { outer, holes: [] };
}

/** 100 to the left of the rectangle, 100 above it and at its right, slanting everywhere: a rectangle of 800 x 400 in it. */
const slanting = board([-100, 0], [900, 0], [800, 400], [700, 500], [0, 500], [-60, 400]);

const sawn = (piece: Partial<SawnPiece>, whole: Region, by: Sawing = sawing): SawnPiece =>
  fromRack(
    {
      sawn: { x: 0, y: 0, length: 800, width: 400, ...piece },
      within: { side: "factory", x: 0, y: 0, turn: 0, whole },
    },
    by,
  )!;

/** The cuts that lead to the rectangle. */
function cutsTo({ cut }: SawnPiece): readonly SawCut[] {
  if (cut?.edge === undefined) return [];
  return [cut, ...[cut.off, cut.rest].flatMap((each) => (each ? cutsTo(each) : []))];
}
const waysOf = (piece: SawnPiece) =>
  cutsTo(piece).map(({ saw, way, along, size }) => [saw, way, along ? "along" : "across", size]);

describe("an odd board", () => {
  it("is ripped with its true edge at the fence, squared at the left and cut to length, all by its true edge", () => {
    const piece = sawn({ part: partId(pieceId("a"), "b") }, slanting);
    expect(waysOf(piece)).toEqual([
      ["table", "rip", "along", 400],
      // the good board begins 100 from the left end of the true edge; the blade lies on the waste side of that
      ["table", "true edge", "across", 97],
      ["table", "cross-cut", "across", 800],
    ]);
    const [rip, square, end] = cutsTo(piece);
    // above the blade, from 403 on: a trapezium that narrows from 797 - -58.2 to 700 - 0 over 97
    expect(areaOfRegion(rip!.rest!.shape![0]!)).toBeCloseTo(((797 + 58.2 + 700) / 2) * 97, 6);
    expect(square!.off).toMatchObject({ length: 97, y: 0 });
    expect(end!.off).toEqual({ x: 0, y: 0, length: 800, width: 400, part: partId(pieceId("a"), "b") });
  });

  it("keeps its right end where the rest is left over anyway, which spares a cut", () => {
    const cut = {
      saw: "table",
      way: "cross-cut",
      along: false,
      size: 500,
      kerf: 3,
      off: { x: 0, y: 0, length: 500, width: 400, part: partId(pieceId("a"), "b") },
      rest: { x: 503, y: 0, length: 297, width: 400 },
    } as const;
    const piece = sawn({ cut }, slanting);
    expect(waysOf(piece).map(([, way]) => way)).toEqual(["rip", "true edge"]);
    const last = cutsTo(piece)[1]!.rest!;
    expect(last).toMatchObject({ x: 0, length: 900, cut: { way: "cross-cut", size: 500, off: { length: 500 } } });
    expect(last.cut!.rest).toMatchObject({ x: 503, length: 397, width: 400 });
  });

  it("has its ends squared first where its true edge is too short for the fence, then goes against the stop block", () => {
    const upright = board([-50, 0], [350, 0], [350, 950], [-50, 900]);
    expect(waysOf(sawn({ length: 300, width: 600 }, upright))).toEqual([
      ["track", "true edge", "across", 48],
      // the square end is long enough for the fence
      ["table", "rip", "across", 300],
      ["table", "cross-cut", "along", 600],
    ]);
  });

  it("is for the track where one person does not bring it to the table saw; without one, that is told", () => {
    const large = board([0, 0], [800, 0], [800, 900], [0, 700]);
    expect(waysOf(sawn({}, large))).toEqual([["track", "rip", "along", 400]]);
    const { track: _, ...bare } = sawing;
    expect(cutsTo(sawn({ width: 662 }, large, bare))[0]!.trouble).toBe("reach");
    expect(cutsTo(sawn({ width: 660 }, large, bare))[0]!.trouble).toBeUndefined();
  });

  it("tells of the knots in each of its pieces", () => {
    const knots = [circle({ x: -30, y: 200 }, 10, "knot"), circle({ x: 850, y: 100 }, 10, "knot")];
    const whole = { x: 0, y: 0, length: 800, width: 400 };
    const within = { side: "factory", x: 0, y: 0, turn: 0, whole: slanting, knots };
    const [rip, square, end] = cutsTo(
      fromRack({ sawn: { ...whole, part: partId(pieceId("a"), "b") }, within }, sawing)!,
    );
    expect([rip!.off, rip!.rest, square!.off, square!.rest, end!.rest].map((piece) => piece?.knots?.length)).toEqual([
      2,
      undefined,
      1,
      1,
      1,
    ]);
  });

  it("that is the rectangle already is left as it is", () => {
    expect(cutsTo(sawn({}, board([0, 0], [800, 0], [800, 400], [0, 400])))).toEqual([]);
  });
});
