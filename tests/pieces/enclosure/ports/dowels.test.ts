import { describe, expect, it } from "vitest";
import { empty } from "../../../findings/chambers.js";
import { box } from "../../../findings/changes.js";
import { planned } from "../../planned.js";

// the air: 18.2 to 681.8, 381.8 and 281.8
const made = planned(
  empty(
    box("dividers", [{ across: "width", at: 400 }]),
    box("dowels", [
      { across: "height", at: [100, 200], thick: 20, in: "left" },
      { across: "width", at: [200, 100], thick: 20, in: "left" },
      { across: "depth", at: [500, 100], thick: 25, in: "right" },
    ]),
  ),
);
const { tubes = [], air, buys, steps } = made.plan.built;

describe("dowels", () => {
  it("run from wall to wall of their chamber, at their place from left, rear and below", () => {
    const [upright, across, along] = tubes.map(({ stretches: [bar] }) => bar!);
    expect(upright!.length).toBeCloseTo(263.6, 9);
    expect(across!.length).toBeCloseTo(400 - 18.2, 9);
    expect(along!.length).toBeCloseTo(363.6, 9);
    // the box stands at x 100, y 30
    const places = [
      [200, 230, 18.2],
      [118.2, 230, 100],
      [600, 48.2, 100],
    ];
    [upright, across, along].forEach((bar, i) => {
      bar!.at.origin.forEach((value, k) => {
        expect(value).toBeCloseTo(places[i]![k]!, 9);
      });
    });
  });

  it("take their volume from their own chamber", () => {
    const own = air.map(({ terms }) => terms.filter(({ what }) => what.startsWith("dowel")));
    expect(own.map((terms) => terms.map(({ what }) => what))).toEqual([["dowel 1", "dowel 2"], ["dowel 3"]]);
    expect(own[1]![0]!.litres).toBeCloseTo((-Math.PI * 12.5 * 12.5 * 363.6) / 1e6, 9);
  });

  it("are bought by their exact length and glued in before the box closes", () => {
    expect(buys.map(({ item }) => item)).toContain("dowel 20 mm thick, cut square to 263.6 mm");
    const order = steps.map(({ id }) => id);
    expect(order.indexOf("box:dowels")).toBeGreaterThan(0);
    expect(order.indexOf("box:dowels")).toBeLessThan(order.indexOf("box:glue"));
  });
});
