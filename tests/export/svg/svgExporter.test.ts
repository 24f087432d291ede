import { beforeAll, describe, expect, it } from "vitest";
import { svgExporter } from "../../../src/export/svg/svgExporter.js";
import { areaOf } from "../../../src/geometry/measure.js";
import type { OutputFile } from "../../../src/model/build.js";
import { pieceId } from "../../../src/model/ids.js";
import { sampleBuild, samplePart } from "../../fixtures/build.js";
import { type ReadSvg, readSvg } from "./svgReader.js";

let files: readonly OutputFile[];

beforeAll(async () => {
  files = [...(await svgExporter.write(sampleBuild()))];
});

function read(path: string): ReadSvg {
  return readSvg(files.find((file) => file.path === path)!.bytes);
}

const onLayer = (svg: ReadSvg, layer: string) => svg.shapes.filter((shape) => shape.layer === layer);

describe("the SVG files", () => {
  it("are one for each sheet and each part", () => {
    expect(files.map(({ path }) => path)).toEqual([
      "sheets/box-1.svg",
      "sheets/plate-offcut-A.svg",
      ...["B1-box-top", "B2-box-bottom", "B3-box-left", "B4-box-right", "B5-box-front", "B6-box-back"].map(
        (name) => `parts/${name}.svg`,
      ),
      "parts/P1-plate-plate.svg",
      "parts/R1-ring-ring.svg",
      "parts/H1-SUM-A1-A9-lid-b-c-Ωλ-50-panel.svg",
    ]);
  });

  it("have a view box whose unit is a millimetre: 420 and 10 round it", () => {
    const svg = read("parts/B2-box-bottom.svg");
    expect([svg.width, svg.height, svg.viewBox]).toEqual(["440mm", "440mm", "0 0 440 440"]);
  });

  it("have the plate's outline with its arcs as arcs and its area within 0.01 mm2", () => {
    const [outline] = onLayer(read("parts/P1-plate-plate.svg"), "OUTLINE");
    expect(outline!.closed).toBe(true);
    expect(outline!.arcs).toBe(4);
    // 1027 x 847 less the notch of 249 x 211, its two inside corners of R 15.5 and the two outside ones of R 53.5: what
    // a corner of radius r rounds off is (1 - pi / 4) r2 (computed)
    const corner = (r: number) => (1 - Math.PI / 4) * r * r;
    const expected = 1027 * 847 - (1027 - 778) * (749 - 538) + 2 * corner(15.5) - 2 * corner(53.5);
    expect(outline!.area).toBeCloseTo(expected, 1);
    expect(Math.abs(outline!.area - expected)).toBeLessThan(0.01);
  });

  it("have the ring's rounds as circles", () => {
    const svg = read("parts/R1-ring-ring.svg");
    expect(onLayer(svg, "OUTLINE")[0]!.area).toBeCloseTo(Math.PI * 155 ** 2, 6);
    expect(onLayer(svg, "OPENING")[0]!.area).toBeCloseTo(Math.PI * 116.5 ** 2, 6);
    expect(onLayer(svg, "HOLE").length).toBe(8);
  });

  it("have on a sheet the sheet itself and the area of every part on it, mirrored or not", () => {
    const box = read("sheets/box-1.svg");
    expect(onLayer(box, "SHEET")[0]!.area).toBeCloseTo(2440 * 1220, 6);
    const areas = onLayer(box, "OUTLINE").map(({ area }) => area);
    const parts = ["B1", "B2", "R1", "B3", "B4", "B5", "B6", "H1"].map(samplePart);
    expect(areas.length).toBe(parts.length);
    for (const [i, part] of parts.entries())
      expect(Math.abs(areas[i]! - areaOf(part.profile.outer))).toBeLessThan(0.01);
    const plate = onLayer(read("sheets/plate-offcut-A.svg"), "OUTLINE")[0]!;
    expect(Math.abs(plate.area - areaOf(samplePart("P1").profile.outer))).toBeLessThan(0.01);
  });

  it("say which part, which build, how deep and what to mind", () => {
    const svg = read("parts/B1-box-top.svg");
    expect(svg.texts).toContain("B1 top");
    expect(svg.description).toContain(`build ${sampleBuild().hash}`);
    expect(svg.description).toContain("millimetres");
    expect(svg.description).toContain("14");
    expect(svg.description).toContain("respirator");
  });

  it("keep their millimetres when the job shows inches", async () => {
    const inches = [...(await svgExporter.write(sampleBuild({ unit: "in", denominator: 16 })))];
    const svg = readSvg(inches.find(({ path }) => path === "parts/B2-box-bottom.svg")!.bytes);
    expect(svg.viewBox).toBe("0 0 440 440");
    expect(svg.description).toContain("millimetres");
  });

  it("are the same bytes each time", async () => {
    const again = [...(await svgExporter.write(sampleBuild()))];
    for (const [i, file] of files.entries())
      expect(Buffer.from(again[i]!.bytes).equals(Buffer.from(file.bytes))).toBe(true);
  });

  it.each([
    "<script>alert(1)</script>",
    "]]> --> <![CDATA[",
    "\" onload='x' `",
    "(a) {b}",
    "🚗 ⌀",
    "\u202Eevil שלום",
    "a\u0000b",
  ])("keep a piece named %j as text and nothing more", async (name) => {
    const build = sampleBuild();
    const parts = build.plan.built.parts.map((part) =>
      part.number === "H1" ? { ...part, piece: pieceId(name), role: name } : part,
    );
    const named = { ...build, plan: { ...build.plan, built: { ...build.plan.built, parts } } };
    for (const { path, bytes } of await svgExporter.write(named)) {
      const svg = readSvg(bytes);
      expect([...svg.tags].filter((tag) => !["title", "desc", "g", "path", "circle", "text"].includes(tag))).toEqual(
        [],
      );
      if (!path.startsWith("parts/H1")) continue;
      const visible = name.replaceAll("\u202E", "").replaceAll("\u0000", " ");
      expect(svg.texts).toContain(`H1 ${visible}`);
      const written = new TextDecoder().decode(bytes);
      for (const sign of ["\u202E", "\u0000"]) expect(written).not.toContain(sign);
    }
  });
});
