import { describe, expect, it } from "vitest";
import { place } from "../../../../src/geometry/frame.js";
import { extentsOf } from "../../../../src/geometry/measure.js";
import { fasteners } from "../../../../src/plan/checks/fasteners.js";
import { holes } from "../../../../src/plan/checks/holes.js";
import { insideClosed } from "../../../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../../../src/plan/checks/netVolume.js";
import { partsApart } from "../../../../src/plan/checks/partsApart.js";
import type { Change } from "../../planned.js";
import { codesOf, featureNamed, partNamed, planned } from "../../planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];

/** The starter's box, empty: 700 x 400 x 300 of 18.2 board, its rear 700 wide between top and bottom. */
const withHatch = (more: object = {}, ...others: readonly Change[]) =>
  planned([
    ...["ring", "plate"].map((name): Change => [["pieces", name], undefined]),
    ...["driver", "terminal", "flush", "net"].map((key) => box(key, undefined)),
    box("stands", { x: 100, y: 30 }),
    box("outside", { width: 700, depth: 400, height: 300 }),
    box("hatch", { in: "rear", size: "200 x 150", with: "M6 button", gasket: 2, ...more }),
    ...others,
  ]);

describe("a service hatch", () => {
  const plain = withHatch();
  const sizeOf = (outer: Parameters<typeof extentsOf>[0]) => {
    const { min, max } = extentsOf(outer);
    return [max.x - min.x, max.y - min.y].map((size) => expect.closeTo(size, 9));
  };

  it("opens its face and covers the opening from outside, 30 over its edges", () => {
    const opening = featureNamed(partNamed(plain, "box/rear"), "opening.hatch").cut;
    expect(opening.kind === "opening" ? sizeOf(opening.region.outer) : []).toEqual([200, 150]);
    const cover = partNamed(plain, "box/hatch");
    expect(sizeOf(cover.profile.outer)).toEqual([260, 210]);
    // the rear looks backwards: 2 of gasket and 18.2 of cover behind the box's outside
    expect(place(cover.at, [0, 0, 0])[1]).toBeCloseTo(-20.2, 9);
    expect(plain.findings.map(({ code }) => code)).toEqual(["hatch-stands-out"]);
  });

  it("asks its own box for inserts: clearance and thread share each axis", () => {
    const axes = plain.plan.built.axes.filter(({ id }) => id.startsWith("box:hatch."));
    // the row is 230 x 180: two gaps on each of its sides
    expect(axes).toHaveLength(8);
    for (const { stack, fastener } of axes) {
      expect(stack.map(({ part, role }) => [part, role])).toEqual([
        ["box/hatch", "clearance"],
        ["box/rear", "thread"],
      ]);
      // 18.2 + 2 + 6 of thread, at the most 18.2 + 2 + 13 - 1
      expect(fastener).toBe("M6 x 30 button");
    }
    expect(plain.plan.built.buys).toContainEqual({ item: "M6 x 12 threaded insert", count: 8 });
    // round the row
    expect(plain.plan.built.buys).toContainEqual({
      item: "gasket, closed-cell, 4 mm loose, 2 mm clamped",
      count: 0.9,
      unit: "m",
    });
  });

  it("glues blocks behind inserts that would come out, clear of the opening", async () => {
    const deep = withHatch({ insert: "M6 x 15" });
    // blocks of 40 stand in the middle of an overlap of 40
    expect(sizeOf(partNamed(deep, "box/hatch").profile.outer)).toEqual([280, 230]);
    const roles = deep.plan.built.parts.map(({ role }) => role).filter((role) => role.startsWith("block."));
    expect(roles).toHaveLength(8);
    expect(deep.plan.built.air[0]!.terms.filter(({ what }) => what.startsWith("block"))).toHaveLength(8);
    const checked = [holes, fasteners, insideClosed, netVolume, partsApart].map((check) =>
      check.run(deep.job, deep.shop, deep.plan),
    );
    expect((await Promise.all(checked)).flat()).toEqual([]);
  });

  it("gives the box the air in its opening and within its gasket", () => {
    const term = plain.plan.built.air[0]!.terms.find(({ what }) => what === "air in the hatch");
    // corners of radius 6
    expect(term?.litres).toBeCloseTo(((200 * 150 - (4 - Math.PI) * 36) * 20.2) / 1e6, 9);
  });

  it("has neither a brace nor a batten behind its opening", () => {
    const braced = (at: number) => codesOf(withHatch({}, box("braces", [{ across: "width", at }])));
    // the opening reaches from 250 to 450
    expect(braced(232.5)).toContain("board-in-way");
    expect(braced(231)).not.toContain("board-in-way");
  });
});
