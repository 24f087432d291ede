import { describe, expect, it } from "vitest";
import { hatch } from "../../src/drawing/hatch.js";
import type { Item, Text } from "../../src/drawing/page.js";
import { sheetPages } from "../../src/drawing/sheetPage.js";
import { boxOf } from "../../src/drawing/textBox.js";
import { pointInRegion } from "../../src/geometry/inside.js";
import { areaOfRegion, extentsOf } from "../../src/geometry/measure.js";
import type { Region } from "../../src/geometry/profile.js";
import { circle, rectangle } from "../../src/geometry/shapes.js";
import type { Show } from "../../src/input/show.js";
import type { Build, NestedSheet } from "../../src/model/build.js";
import type { Part } from "../../src/model/part.js";
import { sampleBuild } from "../fixtures/build.js";
import { slanted } from "../nest/shapes/orders.js";
import { blankPart, orderOf, plain, ring } from "../property/nestOrders.js";

const parts = [
  blankPart("1", "one", plain(500, 300)),
  blankPart("22", "one", plain(30, 30)),
  blankPart("3", "one", ring(320, 296)),
  blankPart("44", "one", plain(30, 30)),
];
const lies = (i: number, x: number, y: number) => ({ part: parts[i]!.id, x, y, turn: 0, backUp: false });
const sheet: NestedSheet = {
  sheet: "one 1",
  board: parts[0]!.board,
  length: 2440,
  width: 1220,
  trim: 5,
  placed: [lies(0, 5, 5), lies(1, 600, 100), lies(2, 700, 20), lies(3, 830, 150)],
};

function built(show: Show, of: NestedSheet, all: readonly Part[] = parts): Build {
  const { plan, process } = orderOf(all, {}, () => ({ gap: 10 }));
  const build = sampleBuild(show);
  return { ...build, plan, process, layout: { ...build.layout, sheets: [of] } };
}

const inches: Show = { unit: "in", denominator: 16 };
const page = (show: Show, of = sheet) => sheetPages(of, built(show, of))[0]!;
const isText = (item: Item): item is Text => item.kind === "text";
const textsOf = (items: readonly Item[]) => items.filter(isText);

/** Filled areas, the first path as the outer boundary. */
function fillsOf(items: readonly Item[]): { readonly grey: number; readonly region: Region }[] {
  return items.flatMap((item) => {
    if (item.kind !== "fill") return [];
    const [outer, ...holes] = item.paths.map((path) => path.map((bend) => ({ ...bend, by: "" })));
    return [{ grey: item.grey, region: { outer: outer!, holes } }];
  });
}

describe("a page of a nested sheet", () => {
  it.each([
    ["A4", "1:10", { unit: "mm" } as const],
    ["Letter", "1:12", inches],
  ])("goes on %s at %s, so that a workshop's printer takes it", (paper, scale, show) => {
    const draft = page(show);
    expect([draft.size.paper, draft.scale]).toEqual([paper, scale]);
    for (const text of textsOf(draft.items)) expect(text.height).toBeGreaterThanOrEqual(1.8);
  });

  it("writes a part's number on the part or in its empty opening, and beside it with a line where neither has room", () => {
    const { items } = page({ unit: "mm" });
    const shapes = fillsOf(items).flatMap(({ grey, region }) => (grey === 1 ? [region] : []));
    // 1:10: the blank of 500 x 300 is 50 x 30 of paper
    const onPaper = (area: number) => shapes.find((shape) => Math.abs(areaOfRegion(shape) - area) < 0.01)!;
    const corners = (text: Text) => {
      const { min, max } = boxOf(text);
      return [min, max, { x: min.x, y: max.y }, { x: max.x, y: min.y }];
    };
    const one = textsOf(items).find(({ text, bold }) => bold && /^1( |$)/.test(text))!;
    expect(corners(one).every((at) => pointInRegion(onPaper(50 * 30), at))).toBe(true);
    // a block of 3 mm of paper holds no two digits: both stand beside theirs, clear of all parts
    for (const number of ["22", "44"]) {
      const beside = textsOf(items).find(({ text, bold }) => bold && text === number)!;
      const blocks = shapes.filter((shape) => Math.abs(areaOfRegion(shape) - 9) < 0.01);
      const solid = [...blocks, onPaper(50 * 30)];
      expect(solid.some((shape) => corners(beside).some((at) => pointInRegion(shape, at)))).toBe(false);
    }
    // 44 lies in the ring's opening, yet a number fits in there beside it
    const three = textsOf(items).find(({ text, bold }) => bold && /^3( |$)/.test(text))!;
    const around = shapes.find((shape) => shape.holes.length === 1)!;
    expect(corners(three).every((at) => pointInRegion({ outer: around.holes[0]!, holes: [] }, at))).toBe(true);
  });

  it("says what is left over and what is kept clear, and draws an odd offcut as it is", () => {
    const outline = slanted(1000, 600, 200);
    const zones = [rectangle(-50, 200, 300, 280, "clamp"), circle({ x: 800, y: 100 }, 60, "knot")];
    const odd: NestedSheet = {
      ...sheet,
      length: 1000,
      width: 600,
      offcut: "A",
      onHand: true,
      outline,
      zones,
      placed: [lies(0, 320, 10)],
    };
    const { items } = page({ unit: "mm" }, odd);
    const words = textsOf(items)
      .map(({ text }) => text)
      .join(" ");
    expect(words).toContain("of odd form");
    expect(words).toContain("Kept clear, dark: 1 clamp, 1 knot");
    expect(words).toMatch(/Left over, hatched: \d/);
    // 1:5, the corner missing
    const [whole] = fillsOf(items);
    expect(areaOfRegion(whole!.region)).toBeCloseTo((1000 * 600 - 200 ** 2 / 2) / 25, 6);
    // the clamp is drawn as far as it lies on the board: 300 of 350
    const dark = fillsOf(items).filter(({ grey }) => grey > 0 && grey < 0.7);
    const across = dark.map(({ region }) => extentsOf(region)).map(({ min, max }) => Math.round(max.x - min.x));
    expect(across).toEqual([60, 24]);
  });
});

it("hatching covers a region and leaves its holes out", () => {
  const region: Region = { outer: rectangle(10, 10, 110, 60, "edge"), holes: [circle({ x: 50, y: 35 }, 15, "hole")] };
  const lines = hatch(region, 4);
  for (const { path } of lines) {
    const [a, b] = [path[0]!, path[1]!];
    expect(pointInRegion(region, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })).toBe(true);
  }
  // lines 4 apart over an area are as long together as a quarter of it, but for the ends
  const length = lines.reduce((sum, { path }) => sum + Math.hypot(path[1]!.x - path[0]!.x, path[1]!.y - path[0]!.y), 0);
  expect(length * 4).toBeGreaterThan(0.97 * areaOfRegion(region));
  expect(length * 4).toBeLessThan(1.03 * areaOfRegion(region));
});
