import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { areaOf, lengthOf } from "../../src/geometry/measure.js";
import type { Profile } from "../../src/geometry/profile.js";
import { type OutlineCorner, outlineOf, sidesOf } from "../../src/input/outline.js";

const at = (x: number, y: number, more: Partial<OutlineCorner> = {}): OutlineCorner => ({ at: [x, y], ...more });

function profileOf(corners: readonly OutlineCorner[]): Profile {
  const made = outlineOf(corners);
  if ("fault" in made) throw new Error(made.fault.def.code);
  return made.profile;
}

const faultOf = (corners: readonly OutlineCorner[]) => {
  const made = outlineOf(corners);
  return "fault" in made ? [made.fault.def.code, ...made.fault.path] : [];
};

describe("outlineOf", () => {
  it("rounds a corner with an arc that is tangent to both sides and named after them", () => {
    const profile = profileOf([at(0, 0, { side: "rear" }), at(100, 0, { round: 20 }), at(100, 80), at(0, 80)]);
    expect(profile.map(({ x, y, by }) => [Math.round(x * 1e9) / 1e9, Math.round(y * 1e9) / 1e9, by])).toEqual([
      [0, 0, "rear"],
      [80, 0, "rear|side.2"],
      [100, 20, "side.2"],
      [100, 80, "side.3"],
      [0, 80, "side.4"],
    ]);
    // A quarter circle: bulge tan(90 / 4), DXF Reference, LWPOLYLINE code 42. It takes r2 (1 - pi / 4) off the corner.
    expect(profile[1]?.bulge).toBeCloseTo(Math.SQRT2 - 1, 12);
    expect(areaOf(profile)).toBeCloseTo(100 * 80 - 400 * (1 - Math.PI / 4), 9);
    expect(lengthOf(profile)).toBeCloseTo(360 - 40 + 10 * Math.PI, 9);
  });

  it("names the sides in the order in which they were written, whichever way round that was", () => {
    const forward = profileOf([at(0, 0, { side: "rear" }), at(100, 0, { side: "right" }), at(0, 80)]);
    expect(sidesOf(forward)).toEqual(["rear", "right", "side.3"]);
    const backward = profileOf([at(0, 0), at(0, 80, { side: "right" }), at(100, 0, { side: "rear" })]);
    expect(areaOf(backward)).toBeCloseTo(4000, 9);
    const rear = backward.find((vertex) => vertex.by === "rear")!;
    expect([rear.x, rear.y]).toEqual([0, 0]);
  });

  it("turns a clockwise outline round with its bows and roundings", () => {
    const corners = [at(0, 0, { bulge: 0.2 }), at(100, 0), at(100, 80, { round: 10 }), at(0, 80)];
    // Walked backwards, side i leaves the corner that it used to arrive at.
    const backwards = corners.map((_, i) => {
      const corner = corners[(4 - i) % 4]!;
      const side = corners[(3 - i) % 4]!;
      return { at: corner.at, round: corner.round, bulge: side.bulge === undefined ? undefined : -side.bulge };
    });
    expect(areaOf(profileOf(backwards))).toBeCloseTo(areaOf(profileOf(corners)), 9);
    expect(lengthOf(profileOf(backwards))).toBeCloseTo(lengthOf(profileOf(corners)), 9);
  });

  it("lets two roundings use up a side between them and leaves no side without length", () => {
    const profile = profileOf([at(0, 0), at(100, 0, { round: 40 }), at(100, 80, { round: 40 }), at(0, 80)]);
    expect(profile.map(({ by }) => by)).toEqual(["side.1", "side.1|side.2", "side.2|side.3", "side.3", "side.4"]);
  });

  it("names the corner at fault", () => {
    expect(faultOf([at(0, 0), at(10, 0), at(0, 10), at(10, 10)])).toEqual(["outline-crosses", 3]);
    expect(faultOf([at(0, 0), at(10, 0), at(20, 0)])).toEqual(["outline-crosses", 2]);
    expect(faultOf([at(0, 0), at(10, 0), at(10, 0), at(0, 10)])).toEqual(["corners-together", 2]);
    expect(faultOf([at(0, 0), at(10, 0), at(0, 10, { round: 5 })])).toEqual(["round-too-large", 2, "round"]);
    expect(faultOf([at(0, 0), at(9, 0, { bulge: 0.1 }), at(0, 9, { round: 1 })])).toEqual([
      "round-beside-bow",
      2,
      "round",
    ]);
  });

  it("sees a spike that runs back over itself and a bow that reaches across", () => {
    expect(faultOf([at(0, 0), at(100, 0), at(50, 0), at(50, 80)])[0]).toBe("outline-crosses");
    expect(faultOf([at(0, 0), at(100, 0, { bulge: -1 }), at(100, 60), at(80, 60), at(80, 30)])[0]).toBe(
      "outline-crosses",
    );
  });

  it("encloses the same area whichever corner comes first", () => {
    const corner = fc.record({ radius: fc.integer({ min: 50, max: 500 }), round: fc.integer({ min: 0, max: 5 }) });
    fc.assert(
      fc.property(fc.array(corner, { minLength: 4, maxLength: 12 }), fc.nat(), (all, start) => {
        // Corners on rays from a point inside make an outline that cannot cross itself.
        const corners = all.map(({ radius, round }, i) => {
          const angle = (2 * Math.PI * i) / all.length;
          return at(radius * Math.cos(angle), radius * Math.sin(angle), { round });
        });
        const turned = [...corners.slice(start % all.length), ...corners.slice(0, start % all.length)];
        const whole = outlineOf(corners);
        const other = outlineOf(turned);
        expect("profile" in other).toBe("profile" in whole);
        if ("fault" in whole || "fault" in other) return;
        expect(areaOf(other.profile)).toBeCloseTo(areaOf(whole.profile), 6);
        expect(areaOf(whole.profile)).toBeGreaterThan(0);
      }),
      { seed: 3 },
    );
  });
});
