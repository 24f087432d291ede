import { expect, it } from "vitest";
import { areaOf, areaOfRegion } from "../../src/geometry/measure.js";
import { rackOf } from "../../src/nest/rack.js";
import { remainderOf } from "../../src/nest/remainder.js";
import { parseShop } from "../../src/shop/parse.js";
import { offcutLine } from "../../src/shop/stockText.js";
import { zonesOf } from "../../src/shop/zones.js";
import { sampleShop } from "../fixtures/jobAndShop.js";
import { blankPart, orderOf, plain, ring } from "../property/nestOrders.js";

const parts = [
  blankPart("a", "one", plain(700, 300)),
  blankPart("b", "one", ring(400, 260)),
  blankPart("c", "one", plain(40, 30)),
];
const { process } = orderOf(parts, {}, () => ({ gap: 8 }));
const sheet = {
  sheet: "box 1",
  board: parts[0]!.board,
  length: 1220,
  width: 610,
  trim: 5,
  measured: 18.2,
  placed: [
    { part: parts[0]!.id, x: 5, y: 5, turn: 0, backUp: false },
    { part: parts[1]!.id, x: 800, y: 160, turn: 0, backUp: false },
    { part: parts[2]!.id, x: 300, y: 440, turn: 0, backUp: false },
  ],
};
const rest = remainderOf(sheet, parts, process, { saw: sampleShop.saw, "least offcut": { length: 150, width: 80 } });
const rack = rackOf(sheet, rest);

it.each(["mm", "in"])("what a sheet leaves can be pasted into the offcuts of a shop file in %s", (units) => {
  for (const list of [rack.pieces, rack.rectangles]) {
    const rows = list.map((offcut) => `      ${offcutLine(offcut)}`).join("\n");
    const read = parseShop(`version: 1\nunits: ${units}\nboards:\n  mdf-18:\n    offcuts:\n${rows}\n`, "shop.yaml");
    expect(read.findings).toEqual([]);
    const offcuts = read.value!.boards["mdf-18"]!.offcuts;
    expect(offcuts.map(({ name, measured }) => [name, measured])).toEqual(list.map(({ name }) => [name, 18.2]));
    for (const [i, { length, width }] of offcuts.entries()) {
      expect(length).toBeCloseTo(list[i]!.length, 6);
      expect(width).toBeCloseTo(list[i]!.width, 6);
    }
  }
});

it("a piece keeps its form: cut-outs as holes, arcs as bows, but for tenths along its edge", () => {
  expect(rack.pieces.map(({ name }) => name)).toEqual(["left of box 1, 1", "left of box 1, 2"]);
  const [large, small] = rack.pieces;
  expect(large!.holes!.length).toBeGreaterThan(0);
  expect(
    large!.outline!.some(({ bulge }) => bulge !== 0) ||
      large!.holes!.some((hole) => hole.some(({ bulge }) => bulge !== 0)),
  ).toBe(true);
  const net = areaOf(large!.outline!) - zonesOf(large!).reduce((sum, hole) => sum + areaOf(hole), 0);
  expect(Math.abs(net / areaOfRegion(rest.regions[0]!) - 1)).toBeLessThan(0.002);
  // the disc from the ring's opening: 260 less the gap on both sides
  expect(areaOf(small!.outline!)).toBeCloseTo((Math.PI * 244 ** 2) / 4, -2);
});

it("rectangles are never larger than what is there, and a plain piece is one", () => {
  for (const [i, { length, width }] of rack.rectangles.entries()) {
    expect(length).toBeLessThanOrEqual(rest.rectangles[i]!.length + 1e-6);
    expect(width).toBeGreaterThan(rest.rectangles[i]!.width - 0.1);
  }
  const empty = { ...sheet, placed: [] };
  const all = rackOf(empty, remainderOf(empty, parts, process, { saw: sampleShop.saw }));
  expect(all.pieces).toEqual([{ name: "left of box 1", trim: 0, measured: 18.2, length: 1210, width: 600 }]);
});
