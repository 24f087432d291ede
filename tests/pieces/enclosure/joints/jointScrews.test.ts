import { describe, expect, it } from "vitest";
import { alongEdge } from "../../../../src/pieces/enclosure/joints/jointScrews.js";

// MDF makers' published advice: a screw threaded into an edge keeps 70 mm from the corner. On walls shorter than 280 mm
// a quarter of the length, never under 25; spacing 100 to 200, about 150 (both common practice, no source).
describe("screws along an edge", () => {
  it("keep 70 mm from both corners of a long wall", () => {
    const places = alongEdge(500);
    expect(places[0]).toBe(70);
    expect(places.at(-1)).toBe(430);
  });

  it("keep a quarter of a short wall's length", () => {
    expect(alongEdge(113.6)[0]).toBeCloseTo(28.4, 9);
  });

  it("stand no further apart than 150 mm", () => {
    for (let length = 60; length < 2000; length += 7) {
      const places = alongEdge(length);
      for (let i = 1; i < places.length; i++) expect(places[i]! - places[i - 1]!).toBeLessThanOrEqual(150 + 1e-9);
    }
  });

  it("leave one in the middle of an edge too short for two", () => {
    expect(alongEdge(60)).toEqual([30]);
  });
});
