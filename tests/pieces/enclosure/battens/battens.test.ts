import { describe, expect, it } from "vitest";
import { extentsOf } from "../../../../src/geometry/measure.js";
import { insideClosed } from "../../../../src/plan/checks/insideClosed.js";
import { netVolume } from "../../../../src/plan/checks/netVolume.js";
import { partsApart } from "../../../../src/plan/checks/partsApart.js";
import type { Change } from "../../planned.js";
import { codesOf, type Planned, partNamed, planned } from "../../planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];

/** The starter's box, empty: 700 x 400 x 300 of 18.2 board, inside 663.6 x 363.6 x 263.6. */
const withBattens = (battens: readonly object[], ...more: readonly Change[]) =>
  planned([
    ...["ring", "plate"].map((name): Change => [["pieces", name], undefined]),
    ...["driver", "terminal", "flush", "net"].map((key) => box(key, undefined)),
    box("stands", { x: 100, y: 30 }),
    box("outside", { width: 700, depth: 400, height: 300 }),
    box("battens", battens),
    ...more,
  ]);
const sizes = (plan: Planned, role: string) => {
  const { min, max } = extentsOf(partNamed(plan, `box/${role}`).profile.outer);
  return [max.x - min.x, max.y - min.y].toSorted((a, b) => a - b).map((size) => expect.closeTo(size, 9));
};
const found = async ({ job, shop, plan }: Planned) =>
  (await Promise.all([insideClosed, netVolume, partsApart].map((check) => check.run(job, shop, plan)))).flat();

describe("battens along inside corners", () => {
  it("run from wall to wall, as wide as asked and as thick as their board", () => {
    const box20 = withBattens([{ along: "bottom + left", wide: 20 }]);
    expect(sizes(box20, "batten.1")).toEqual([20, 363.6]);
    expect(partNamed(box20, "box/batten.1").thickness).toBe(18.2);
    const term = box20.plan.built.air[0]!.terms.find(({ what }) => what === "batten 1");
    expect(term?.litres).toBeCloseTo((-20 * 363.6 * 18.2) / 1e6, 9);
  });

  it("end where an earlier one lies", async () => {
    // flat on the bottom 20 wide, then up the corner from its top, then along the front between the two
    const three = withBattens([{ along: ["bottom + left", "left + front", "bottom + front"], wide: 20 }]);
    expect(sizes(three, "batten.2")).toEqual([20, 263.6 - 18.2]);
    expect(sizes(three, "batten.3")).toEqual([20, 663.6 - 20]);
    expect(await found(three)).toEqual([]);
  });

  it("are cut for each chamber and at braces, and end at the battens under a lid", async () => {
    const parted = withBattens(
      [{ along: ["bottom + front", "front + left"], wide: 20 }],
      box("dividers", [{ across: "width", at: 300 }]),
      box("braces", [{ across: "width", at: 500, in: "right" }]),
      box("panels", { top: { bolted: { with: "M6 button", gasket: 3 } } }),
    );
    const roles = parted.plan.built.parts.map(({ role }) => role).filter((role) => /^batten\.\d/.test(role));
    // left of the divider, right of it up to the brace, behind the brace; and the corner in front on the left
    expect(roles).toHaveLength(4);
    // 300 less the bottom, lid, its gasket and battens, and the batten on the bottom
    expect(sizes(parted, "batten.4")).toEqual([20, 300 - 4 * 18.2 - 3]);
    expect(await found(parted)).toEqual([]);
  });

  it("lean with a raked wall", async () => {
    const raked = withBattens(
      [{ along: ["bottom + rake", "rake + top", "left + rake"], wide: 25 }],
      box("outside", {
        side: [
          { at: [0, 0], side: "bottom" },
          { at: [400, 0], side: "rake" },
          { at: [320, 300], side: "top" },
          { at: [0, 300], side: "back" },
        ],
        width: 600,
      }),
    );
    expect(codesOf(raked)).toEqual([]);
    expect(partNamed(raked, "box/batten.1").edges["rake"]?.bevel).toBeCloseTo(Math.atan2(80, 300), 9);
    expect(await found(raked)).toEqual([]);
  });

  it("must not lie behind a cut-out", () => {
    const terminal = (up: number) =>
      codesOf(
        withBattens([{ along: "bottom + front", wide: 20 }], box("terminal", { in: "front", hole: 60, at: [350, up] })),
      );
    // the batten's top lies at 36.4
    expect(terminal(65.9)).toContain("board-in-way");
    expect(terminal(66.5)).not.toContain("board-in-way");
  });
});

describe("battens that are sawn", () => {
  it("are cut down to whole steps, and stand off the wall at one end by what remains", async () => {
    const sawn = withBattens([{ along: "bottom + front", wide: 20 }], box("cut by", "saw"));
    // 700 less twice 18.2 is 663.6; the starter's saw is set in half millimetres
    expect(sizes(sawn, "batten.1")).toEqual([20, 663.5]);
    const term = sawn.plan.built.air[0]!.terms.find(({ what }) => what === "batten 1");
    expect(term?.litres).toBeCloseTo((-20 * 663.5 * 18.2) / 1e6, 9);
    expect(await found(sawn)).toEqual([]);
  });
});
