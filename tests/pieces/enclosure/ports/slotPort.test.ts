import { describe, expect, it } from "vitest";
import { extentsOf } from "../../../../src/geometry/measure.js";
import { starterShop } from "../../../../src/shop/starter.js";
import { planBox } from "../../../property/boxes.js";
import { proveBox } from "../../../property/boxProof.js";

const t = 18.2;
const { step } = starterShop().saw;
const gap = 40;

/** A sawn box, 700 x 400 x 300, a port in its front beside its right side. */
function sawn(port: object) {
  const planned = planBox({
    kind: "enclosure",
    board: "thick",
    outside: { width: 700, depth: 400, height: 300 },
    laps: ["front", "right", "rear", "left", "top", "bottom"],
    "slot ports": [{ in: "front", beside: "right", gap, ...port }],
    stands: { x: 100, y: 100, z: 10 },
    "held by": { straps: 2, to: "rings" },
    "cut by": "saw",
  });
  expect(planned.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const { air, parts } = planned.plan.built;
  const sizes = (role: string) => {
    const { min, max } = extentsOf(parts.find((part) => part.role === role)!.profile.outer);
    return { along: max.x - min.x, up: max.y - min.y };
  };
  return { planned, sizes, term: (what: string) => air[0]!.terms.find((each) => each.what === what)!.litres };
}
const steps = (size: number) => size / step;

describe("a slot port whose panels are sawn", () => {
  it("has its panel cut to the nearest step, and is so much longer", async () => {
    // 300 less the front's 18.2 is 281.8: 282 on steps of half a millimetre
    const { planned, sizes, term } = sawn({ long: 300 });
    expect(step).toBe(0.5);
    expect(sizes("port.1").along).toBeCloseTo(282, 9);
    expect(term("port 1 air")).toBeCloseTo((-gap * 282 * sizes("port.1").up) / 1e6, 9);
    await proveBox(planned);
  });

  it("has both panels on the step where it turns, the first a little short of the second's face", async () => {
    const { planned, sizes, term } = sawn({ long: 600, turns: true });
    const [first, second] = [sizes("port.1"), sizes("port turn.1")];
    for (const size of [first.along, second.along]) expect(steps(size)).toBeCloseTo(Math.round(steps(size)), 6);
    // the left side stands between front and rear, so it is as long as the inside is deep
    const clear = sizes("left").along;
    const short = clear - gap - first.along;
    expect(short).toBeGreaterThanOrEqual(-1e-9);
    expect(short).toBeLessThan(step);
    const channel = gap * clear + gap * (t + second.along) + t * short;
    expect(term("port 1 air")).toBeCloseTo((-channel * first.up) / 1e6, 9);
    await proveBox(planned);
  });
});
