import { describe, expect, it } from "vitest";
import { extentsOf } from "../../../../src/geometry/measure.js";
import { type BoxSpec, planBox } from "../../../property/boxes.js";

const made = (spec: BoxSpec) =>
  planBox({ kind: "enclosure", board: "thick", "cut by": "cnc", stands: { x: 10, y: 10 }, ...spec });
const cube = { width: 500, depth: 420, height: 300 };
const at = (...places: readonly (readonly [number, number])[]) => places.map((place) => ({ at: place }));

function sizeOf(spec: BoxSpec, role: string): readonly number[] {
  const part = made(spec).plan.built.parts.find((each) => each.role === role)!;
  const { min, max } = extentsOf(part.profile.outer);
  return [max.x - min.x, max.y - min.y].map((size) => Math.round(size * 1e6) / 1e6);
}

const grossOf = (spec: BoxSpec) => made(spec).plan.built.air[0]!.terms[0]!.litres;

describe("the faces of a box", () => {
  it("have the names of the job, or names by where they look", () => {
    const { plan } = made({
      outside: {
        side: [
          { at: [0, 150] },
          { at: [220, 150], side: "arch" },
          { at: [220, 0] },
          { at: [540, 0] },
          { at: [540, 330] },
          { at: [0, 330] },
        ],
        width: 400,
      },
    });
    const roles = plan.built.parts.map(({ role }) => role);
    expect(roles).toEqual(["bottom", "arch", "bottom 2", "front", "top", "rear", "left", "right"]);
  });

  it("take a measured thickness each", () => {
    // the top of 12.1, the others of 18.2: walls are 300 - 12.1 - 18.2 high
    const spec = { outside: cube, panels: { top: { board: "thin" } } };
    expect(sizeOf(spec, "front")[1]).toBeCloseTo(269.7, 9);
    expect(grossOf(spec)).toBeCloseTo((463.6 * 383.6 * 269.7) / 1e6, 9);
  });

  it("take a second board behind, between their neighbours, out of the air", () => {
    const spec = { outside: cube, panels: { front: { double: "thin" } } };
    expect(sizeOf(spec, "front lining")).toEqual([463.6, 263.6]);
    expect(grossOf(spec)).toBeCloseTo((463.6 * (383.6 - 12.1) * 263.6) / 1e6, 9);
  });

  it("are set in by what the job says, their neighbours running out past them", () => {
    const spec = { outside: cube, panels: { front: { "set in": 20 } } };
    expect(sizeOf(spec, "front")).toEqual([463.6, 263.6]);
    expect(sizeOf(spec, "left")[0]).toBeCloseTo(420 - 18.2, 9);
    expect(grossOf(spec)).toBeCloseTo((463.6 * (383.6 - 20) * 263.6) / 1e6, 9);
  });

  it("run in grooves where they are set in and let in", () => {
    const spec = { outside: cube, panels: { front: { "set in": 20 } }, joints: { form: "rebate", deep: 6 } };
    expect(sizeOf(spec, "front")).toEqual([463.6 + 12, 263.6 + 12]);
    const left = made(spec).plan.built.parts.find(({ role }) => role === "left")!;
    const groove = left.features.find(({ cut }) => cut.kind === "groove")!.cut;
    expect(groove).toMatchObject({ width: expect.closeTo(18.2, 9), depth: 6 });
    // the air is the same: what is let in lies in the boards
    expect(grossOf(spec)).toBeCloseTo((463.6 * (383.6 - 20) * 263.6) / 1e6, 9);
  });

  it("stand between the walls where the job says so", () => {
    const spec = { outside: { side: at([0, 0], [320, 0], [320, 380], [0, 380]), width: 640 } };
    expect(sizeOf(spec, "left")).toEqual([320, 380]);
    expect(sizeOf({ ...spec, ends: "between" }, "left")).toEqual([283.6, 343.6]);
    expect(grossOf({ ...spec, ends: "between" })).toBeCloseTo(grossOf(spec), 9);
  });

  it("keep a square end where a leaning corner is to be square, standing proud of the outline", () => {
    const spec = { outside: { side: at([0, 0], [320, 0], [250, 380], [0, 380]), width: 640 } };
    const bevels = (form: string) => {
      const part = made({ ...spec, joints: { form } }).plan.built.parts.find(({ role }) => role === "front")!;
      return Object.values(part.edges).filter(({ bevel }) => bevel !== 0).length;
    };
    expect(bevels("butt")).toBe(2);
    expect(bevels("square")).toBe(0);
  });
});

describe("a covered box", () => {
  const carpeted = (faces?: readonly string[]) =>
    made({ outside: cube, stands: { x: 10, y: 10 }, covered: { with: "carpet", ...(faces ? { faces } : {}) } });

  it("bears its covering on the faces that are named, else on all", () => {
    const covered = (box: ReturnType<typeof made>) =>
      box.plan.built.parts.filter(({ coverings }) => coverings.face === "carpet").map(({ role }) => role);
    expect(covered(carpeted(["top", "front"]))).toEqual(["front", "top"]);
    expect(covered(carpeted())).toHaveLength(6);
  });

  it("stands on its covering, and is as much higher", () => {
    expect(carpeted().plan.frames[0]![1].origin[2]).toBeCloseTo(3.5, 9);
    expect(carpeted(["top"]).plan.frames[0]![1].origin[2]).toBe(0);
  });
});
