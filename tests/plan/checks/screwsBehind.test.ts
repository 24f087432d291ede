import { describe, expect, it } from "vitest";
import { screwsBehind } from "../../../src/plan/checks/screwsBehind.js";
import { type Change, planned } from "../../pieces/planned.js";

const box = (path: string, value: unknown): Change => [["pieces", "box", ...path.split(".")], value];

/** The starter's box, 700 x 400 x 300, its driver in the middle of the top, screwed on a circle of 248 with eight of 40. */
const withDriver = (turned: string, ...more: readonly Change[]) => {
  const { job, shop, plan } = planned([
    ...["ring", "plate"].map((name): Change => [["pieces", name], undefined]),
    ...["terminal", "flush", "net"].map((key) => box(key, undefined)),
    box("stands", { x: 100, y: 30 }),
    box("outside", { width: 700, depth: 400, height: 300 }),
    box("driver", { is: "ten", in: "top", turned }),
    [["drivers", "ten", "bolts", "screw"], "4.0 x 40"],
    ...more,
  ]);
  return screwsBehind.run(job, shop, plan) as Exclude<ReturnType<typeof screwsBehind.run>, Promise<unknown>>;
};

describe("a driver's screws that come out behind their panel", () => {
  // on the axes of the panel two of them lie 124 from the middle; between, 124 x cos 22.5 = 114.6
  const cases: readonly (readonly [string, Change])[] = [
    ["box brace.1", box("braces", [{ across: "width", at: 470 }])],
    ["box divider.1", box("dividers", [{ across: "width", at: 470 }])],
    ["box batten.1", box("battens", [{ along: "top + front", wide: 60 }])],
    ["box port.1", box("slot ports", [{ in: "front", beside: "right", gap: 193.6, long: 370 }])],
  ];
  it.each(cases)("are told where they run into %s, and how far a turn takes them past it", (name, behind) => {
    const [found, ...more] = withDriver(
      "22.5deg",
      box("laps", ["front", "top", "bottom", "rear", "left", "right"]),
      behind,
    );
    expect(more).toEqual([]);
    expect(found?.facts["part"]?.value).toBe(name);
    const turn = Number(found?.facts["turn"]?.value);
    expect((turn * 180) / Math.PI).toBeGreaterThan(10);
    expect(withDriver(`${22.5 + (turn * 180) / Math.PI}deg`, behind)).toEqual([]);
    expect(withDriver("0deg", behind)).toEqual([]);
  });
});
