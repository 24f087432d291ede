import { describe, expect, it } from "vitest";
import { areaOfRegion } from "../../../src/geometry/measure.js";
import { type Change, codesOf, partNamed, planned } from "../planned.js";

const withPanel = (spec: unknown, ...others: Change[]) => planned([[["pieces", "cover"], spec], ...others]);

describe("a plain panel", () => {
  it("is a rectangle with holes and rounded openings", () => {
    const job = withPanel({
      kind: "panel",
      board: "plate",
      outline: "600 x 300",
      holes: { cable: { at: [50, 50], across: 30 }, peg: { at: [100, 50], across: 8, deep: 6 } },
      openings: { hand: { at: [300, 150], size: "120 x 40", round: 20 } },
    });
    expect(codesOf(job).filter((code) => code !== "groove-broken")).toEqual([]);
    const part = partNamed(job, "cover/panel");
    const slot = 80 * 40 + Math.PI * 20 ** 2;
    expect(areaOfRegion(part.profile)).toBeCloseTo(600 * 300 - Math.PI * 15 ** 2 - slot, 6);
  });

  it("follows a bowed and rounded outline", () => {
    const job = withPanel({
      kind: "panel",
      board: "plate",
      outline: [{ at: [0, 0] }, { at: [400, 0], bulge: 1 }, { at: [400, 200] }, { at: [0, 200], round: 50 }],
    });
    const area = 400 * 200 + (Math.PI * 100 ** 2) / 2 - (1 - Math.PI / 4) * 50 ** 2;
    expect(areaOfRegion(partNamed(job, "cover/panel").profile)).toBeCloseTo(area, 6);
  });

  it("has no place in the vehicle unless it lies somewhere", () => {
    const loose = withPanel({ kind: "panel", board: "plate", outline: "60 x 30" });
    expect(loose.plan.frames.map(([id]) => id)).not.toContain("cover");
    const lying = withPanel({ kind: "panel", board: "plate", outline: "60 x 30", lies: { x: 10, y: 20, z: 0 } });
    const frame = new Map(lying.plan.frames.map(([id, at]) => [String(id), at])).get("cover");
    expect(frame?.origin).toEqual([10, 20, 12.1]);
  });

  it("is cut as large as both its faces, and stands as they are", () => {
    const leaning = (wider: "face" | "back") =>
      withPanel({
        kind: "panel",
        board: "plate",
        outline: "600 x 100",
        bevels: { far: { angle: "30deg", wider }, right: { angle: "45deg" } },
        lies: { x: 100, y: 100, z: 200 },
      });
    const run = 12.1 * Math.tan(Math.PI / 6);
    const cover = partNamed(leaning("back"), "cover/panel");
    expect(areaOfRegion(cover.profile)).toBeCloseTo(600 * 100, 6);
    expect(areaOfRegion(partNamed(leaning("face"), "cover/panel").blank)).toBeCloseTo(600 * 100, 6);
    // halfway down the board is both shorter than the face and wider than it: the blank holds that corner too
    expect(areaOfRegion(cover.blank)).toBeCloseTo(600 * (100 + run), 6);
  });

  it("refuses a blind hole as deep as its board", () => {
    const deep = (mm: number) =>
      codesOf(
        withPanel({
          kind: "panel",
          board: "plate",
          outline: "60 x 30",
          holes: { peg: { at: [30, 15], across: 5, deep: mm } },
        }),
      );
    expect(deep(12.1)).toContain("hole-too-deep");
    expect(deep(12)).not.toContain("hole-too-deep");
  });

  it("must stay in one piece", () => {
    const slit = (height: number) =>
      codesOf(
        withPanel({
          kind: "panel",
          board: "plate",
          outline: "60 x 30",
          openings: { slit: { at: [30, 15], size: `4 x ${height}` } },
        }),
      );
    expect(slit(30)).toContain("nothing-left");
    expect(slit(29)).not.toContain("nothing-left");
  });
});
