import { describe, expect, it } from "vitest";
import { dxfExporter } from "../../../src/export/dxf/dxfExporter.js";
import { partOnSheet, restShapes, setupBoard } from "../../../src/export/shapes/sheetShapes.js";
import { svgExporter } from "../../../src/export/svg/svgExporter.js";
import { pointInRegion } from "../../../src/geometry/inside.js";
import { areaOf, extentsOf } from "../../../src/geometry/measure.js";
import { circle, rectangle } from "../../../src/geometry/shapes.js";
import type { Build } from "../../../src/model/build.js";
import { toSheet } from "../../../src/nest/placed.js";
import { remainderOf } from "../../../src/nest/remainder.js";
import { sampleBuild } from "../../fixtures/build.js";
import { slanted } from "../../nest/shapes/orders.js";
import { areaOfLine, readDxf } from "../dxf/reader.js";

const sample = sampleBuild();
const odd = sample.layout.sheets.find(({ offcut }) => offcut !== undefined)!;
const outline = slanted(odd.length, odd.width, 100);
const zones = [rectangle(0, 0, 40, 30, "clamp"), circle({ x: odd.length - 30, y: 30 }, 10, "knot")];
const sheet = { ...odd, outline, zones };
const build: Build = { ...sample, layout: { ...sample.layout, sheets: [sheet] } };

describe("files of an odd offcut with zones", () => {
  it("in DXF hold its outline, and what is kept clear on a layer of its own", async () => {
    const file = [...(await dxfExporter.write(build))].find(({ path }) => path.startsWith("sheets/"))!;
    const drawing = readDxf(file.bytes);
    const areas = (layer: string) => drawing.lines.filter((line) => line.layer === layer).map(areaOfLine);
    expect(areas("SHEET")[0]).toBeCloseTo(odd.length * odd.width - 100 ** 2 / 2, 3);
    expect(areas("KEEP-CLEAR")[0]).toBeCloseTo(40 * 30, 3);
    expect(drawing.layers).toContain("KEEP-CLEAR");
  });

  it("in SVG hold what is left over too, hatched, with its sizes", async () => {
    const file = [...(await svgExporter.write(build))].find(({ path }) => path.startsWith("sheets/"))!;
    const text = new TextDecoder().decode(file.bytes);
    for (const layer of ["SHEET", "KEEP-CLEAR", "SIZE"]) expect(text).toContain(`id="${layer}"`);
    const rest = remainderOf(sheet, build.plan.built.parts, build.process, build.shop);
    const shapes = restShapes(sheet, rest, { unit: "mm" });
    expect(shapes.filter(({ layer }) => layer === "LEFT-OVER-RECTANGLE")).toHaveLength(rest.rectangles.length);
  });

  it("lie turned over about the long side where the sheet does", () => {
    const setup = {
      name: "a",
      sheet: sheet.sheet,
      board: sheet.board,
      turnedOver: true,
      length: odd.length,
      width: odd.width,
    };
    const turned = setupBoard(build, {
      ...setup,
      thickness: 18,
      safe: 10,
      parts: [],
      pins: [],
      runs: [],
      withheld: [],
      seconds: 0,
    });
    expect(areaOf(turned.outline!)).toBeCloseTo(areaOf(outline), 6);
    // the clamp at the lower left corner is at the upper one
    expect(extentsOf(turned.zones![0]!)).toEqual({ min: { x: 0, y: odd.width - 30 }, max: { x: 40, y: odd.width } });
    expect(pointInRegion({ outer: turned.outline!, holes: [] }, { x: odd.length - 1, y: 1 })).toBe(false);
  });
});

it("a name never runs over its part's edge", () => {
  for (const of of sample.layout.sheets)
    for (const placed of of.placed) {
      const part = sample.plan.built.parts.find(({ id }) => id === placed.part)!;
      const name = partOnSheet(part, placed).find(({ layer }) => layer === "NAME")!;
      if (name.kind !== "words") throw new Error("a name is words");
      const region = toSheet(part, placed).region(part.profile);
      const width = [...name.text].length * name.height * 0.9;
      for (const [x, y] of [
        [0, 0],
        [width, 0],
        [width, name.height],
        [0, name.height],
      ] as const)
        expect(pointInRegion(region, { x: name.at.x + x, y: name.at.y + y }), name.text).toBe(true);
    }
});
