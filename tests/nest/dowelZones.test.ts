import { expect, it } from "vitest";
import { areaOf, extentsOf } from "../../src/geometry/measure.js";
import { rectangle } from "../../src/geometry/shapes.js";
import { boardId } from "../../src/model/ids.js";
import { dowelZones, takesDowels } from "../../src/nest/dowelZones.js";
import { slanted } from "./shapes/orders.js";

const registration = { board: boardId("one"), d: 8, into: 10, fromEnds: [15, 25], keepOff: 10 } as const;

it("keeps a disc about each dowel, on the long middle line, unequally far from the ends", () => {
  const zones = dowelZones({ length: 1000, width: 500 }, registration);
  expect(zones.map((zone) => extentsOf(zone))).toEqual([
    { min: { x: 5, y: 240 }, max: { x: 25, y: 260 } },
    { min: { x: 965, y: 240 }, max: { x: 985, y: 260 } },
  ]);
  expect(areaOf(zones[0]!)).toBeCloseTo(Math.PI * 100, 9);
});

it("finds out an offcut that has no board where a dowel stands", () => {
  expect(takesDowels({ length: 600, width: 400 }, registration)).toBe(true);
  // the slant takes the corner from 350 of the right side: the dowel at 575, 200 stays 10 clear of it, or not
  expect(takesDowels({ length: 600, width: 400, outline: slanted(600, 400, 150) }, registration)).toBe(true);
  expect(takesDowels({ length: 600, width: 400, outline: slanted(600, 400, 250) }, registration)).toBe(false);
  expect(takesDowels({ length: 600, width: 400, outline: rectangle(0, 0, 600, 400, "edge") }, registration)).toBe(true);
  expect(takesDowels({ length: 20, width: 400 }, registration)).toBe(false);
});
