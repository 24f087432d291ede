import { describe, expect, it } from "vitest";
import { runsAlong, runsBeside } from "../../src/drawing/edgeRuns.js";
import { circleAt, rectangleAt } from "../fixtures/outlines.js";

const square = rectangleAt(0, 0, 100, 60, ["a", "b", "c", "d"]);
const places = (path: readonly { x: number; y: number }[]) => path.map(({ x, y }) => [x, y]);

describe("edges by name", () => {
  it("are joined where one follows another, also over the start of the profile", () => {
    const runs = runsAlong(square, (by) => by === "d" || by === "a");
    expect(runs.map(({ path }) => places(path))).toEqual([
      [
        [0, 60],
        [0, 0],
        [100, 0],
      ],
    ]);
    expect(runsAlong(square, (by) => by === "a" || by === "c").length).toBe(2);
    expect(runsAlong(square, () => true)).toEqual([{ path: square, closed: true }]);
    expect(runsAlong(square, () => false)).toEqual([]);
  });

  it("have a line beside them, outside or in, that ends where the other edges stand", () => {
    const [inside] = runsBeside(square, new Set(["a"]), -8);
    expect(inside!.path.map(({ y }) => y)).toEqual([8, 8].map((y) => expect.closeTo(y, 6)));
    const [round] = runsBeside(circleAt(0, 0, 310, "outside"), new Set(["outside"]), -8);
    expect(round!.closed).toBe(true);
    for (const { x, y } of round!.path) expect(Math.hypot(x, y)).toBeCloseTo(147, 6);
  });
});
