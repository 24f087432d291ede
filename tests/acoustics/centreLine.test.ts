import { describe, expect, it } from "vitest";
import { centreLineLength } from "../../src/acoustics/centreLine.js";

describe("the middle of a port", () => {
  it("is its straights and the arcs of its elbows, whichever way these turn", () => {
    const elbow = { radius: 80, turn: Math.PI / 2 };
    expect(centreLineLength([120, 60], [elbow])).toBeCloseTo(180 + 40 * Math.PI, 9);
    expect(centreLineLength([120, 60], [elbow, { radius: 80, turn: -Math.PI / 4 }])).toBeCloseTo(180 + 60 * Math.PI, 9);
  });
});
