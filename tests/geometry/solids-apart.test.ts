import { describe, expect, it } from "vitest";
import { type Frame, identity, shifted } from "../../src/geometry/frame.js";
import { blockAround, cornersOf, separation } from "../../src/geometry/solids-apart.js";

const cube = { min: [0, 0, 0], max: [10, 10, 10] } as const;
const standing = (at: Frame) => ({ block: cube, at });

describe("two blocks", () => {
  it("stand as far apart as the gap between their faces", () => {
    expect(separation(standing(identity), standing(shifted(13.5, 2, -3)))).toBeCloseTo(3.5, 12);
  });

  it("touch at nought and overlap by the least shift that would free them", () => {
    expect(separation(standing(identity), standing(shifted(10, 0, 0)))).toBeCloseTo(0, 12);
    expect(separation(standing(identity), standing(shifted(8, 7, 1)))).toBeCloseTo(-2, 12);
  });

  it("are apart corner to corner where their upright extents overlap", () => {
    // a square turned by 45 degrees about z, its left corner at x = 10 + 1
    const s = Math.sin(Math.PI / 8);
    const turned: Frame = { origin: [11, 5, 0], quat: [0, 0, -s, Math.cos(Math.PI / 8)] };
    expect(separation(standing(identity), standing(turned))).toBeCloseTo(1, 9);
  });

  it("are apart edge to edge, which only a cross product of edges shows", () => {
    // two bars crossing over each other like the arms of an X, leaning so that no face parts them
    const bar = { min: [-50, -1, -1], max: [50, 1, 1] } as const;
    const roll = Math.PI / 8;
    const one: Frame = { origin: [0, 0, 0], quat: [Math.sin(roll), 0, 0, Math.cos(roll)] };
    const half = Math.SQRT1_2;
    // the other bar runs along y, rolled by 45 degrees too
    const along: Frame = {
      origin: [0, 0, 2 * Math.SQRT2 + 0.1],
      quat: [half * Math.sin(roll), half * Math.sin(roll), half * Math.cos(roll), half * Math.cos(roll)],
    };
    expect(separation({ block: bar, at: one }, { block: bar, at: along })).toBeCloseTo(0.1, 9);
  });

  it("have eight corners, and a block around them", () => {
    const corners = cornersOf(standing(shifted(1, 2, 3)));
    expect(corners).toHaveLength(8);
    expect(blockAround(corners)).toEqual({ min: [1, 2, 3], max: [11, 12, 13] });
  });
});
