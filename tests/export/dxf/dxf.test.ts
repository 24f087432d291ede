import { describe, expect, it } from "vitest";
import { dxfExporter } from "../../../src/export/dxf/dxfExporter.js";
import type { Show } from "../../../src/input/show.js";
import type { OutputFile } from "../../../src/model/build.js";
import type { Part } from "../../../src/model/part.js";
import { sampleBuild, samplePart } from "../../fixtures/build.js";
import { areaOfLine, type ReadDrawing, type ReadLine, readDxf } from "./reader.js";

const mm: Show = { unit: "mm" };
const inches: Show = { unit: "in", denominator: 16 };

async function filesIn(show: Show): Promise<readonly OutputFile[]> {
  return [...(await dxfExporter.write(sampleBuild(show)))];
}

async function drawings(show: Show): Promise<ReadonlyMap<string, ReadDrawing>> {
  return new Map((await filesIn(show)).map(({ path, bytes }) => [path, readDxf(bytes)]));
}

const on = (drawing: ReadDrawing, layer: RegExp) => drawing.lines.filter((line) => layer.test(line.layer));
const areaOn = (drawing: ReadDrawing, layer: RegExp) =>
  on(drawing, layer).reduce((sum, line) => sum + areaOfLine(line), 0);
const netArea = (drawing: ReadDrawing) => areaOn(drawing, /^OUTLINE/) - areaOn(drawing, /^(OPENING|HOLE)(-LATER)?$/);
const bows = (line: ReadLine) => line.vertices.filter(({ bulge }) => bulge !== 0).length;
const tableWords = (drawing: ReadDrawing) =>
  drawing.words.filter(({ layer }) => layer === "TABLE").map(({ text }) => text);

/** Areas in mm2 worked out from the sizes in the fixture, not with the code under test. */
const disc = (d: number) => (Math.PI * d * d) / 4;
const areas: Readonly<Record<string, number>> = {
  B1: 420 * 420 - disc(233) - 8 * disc(2.3) - 4 * disc(4.5),
  B2: 420 * 420,
  B3: 420 * 113.6,
  B4: 420 * 113.6,
  B5: 383.6 * 113.6 - 78 * 54,
  B6: 383.6 * 113.6,
  // corners of 53.5 lose (1 - pi/4) r^2 each; the notch, 249 x 211, loses its two rounded corners of 15.5
  P1:
    1027 * 847 -
    2 * (1 - Math.PI / 4) * 53.5 ** 2 -
    (249 * 211 - 2 * (1 - Math.PI / 4) * 15.5 ** 2) -
    disc(312) -
    6 * disc(7),
  R1: disc(310) - disc(233) - 8 * disc(4.5),
  H1: 200 * 120,
};

function partDrawing(all: ReadonlyMap<string, ReadDrawing>, number: string): ReadDrawing {
  const path = [...all.keys()].find((each) => each.startsWith(`parts/${number}-`));
  return all.get(path ?? "")!;
}

describe("DXF files, read back through dxf-parser", () => {
  it("are written for every sheet and part, with names that are safe", async () => {
    const paths = (await filesIn(mm)).map(({ path }) => path);
    expect(paths.filter((path) => path.startsWith("sheets/"))).toEqual([
      "sheets/box-1.dxf",
      "sheets/plate-offcut-A.dxf",
    ]);
    expect(paths.filter((path) => path.startsWith("parts/"))).toHaveLength(9);
    for (const path of paths) expect(path).toMatch(/^(sheets|parts)\/[\p{L}\p{N}_-]+\.dxf$/u);
  });

  it("are byte-identical when written twice", async () => {
    expect(await filesIn(mm)).toEqual(await filesIn(mm));
  });

  it.each([
    ["mm", mm, 4, 1, 1],
    ["in", inches, 1, 0, 25.4],
  ] as const)("say their unit and hold every part's area in %s", async (_, show, units, metric, unit) => {
    const all = await drawings(show);
    for (const [number, area] of Object.entries(areas)) {
      const drawing = partDrawing(all, number);
      expect(drawing.header.$ACADVER).toBe("AC1009");
      expect(drawing.header.$INSUNITS).toBe(units);
      expect(drawing.header.$MEASUREMENT).toBe(metric);
      expect(Math.abs(netArea(drawing) * unit ** 2 - area), number).toBeLessThan(0.01);
    }
    const sheet = all.get("sheets/box-1.dxf")!;
    const onBox = Object.entries(areas).filter(([number]) => number !== "P1");
    expect(Math.abs(netArea(sheet) * unit ** 2 - onBox.reduce((sum, [, area]) => sum + area, 0))).toBeLessThan(0.01);
    expect(Math.abs(netArea(all.get("sheets/plate-offcut-A.dxf")!) * unit ** 2 - areas.P1!)).toBeLessThan(0.01);
  });

  it("hold the same in the form of 2000: light polylines, the same areas, arcs, layers, colours and words", async () => {
    const build = sampleBuild(mm);
    const shop = { ...build.shop, dxf: "2000" as const };
    const files = [...(await dxfExporter.write({ ...build, shop }))];
    const old = await drawings(mm);
    expect(files.map(({ path }) => path)).toEqual([...old.keys()]);
    for (const { path, bytes } of files) {
      const drawing = readDxf(bytes);
      const { text: _, header, ...rest } = drawing;
      const { text: before, header: other, ...same } = old.get(path)!;
      expect(rest).toEqual(same);
      expect(header).toMatchObject({ $ACADVER: "AC1015", $INSUNITS: other.$INSUNITS, $EXTMAX: other.$EXTMAX });
      expect(drawing.text).not.toMatch(/^POLYLINE\r$/m);
      expect(before).not.toMatch(/^LWPOLYLINE\r$/m);
      // every handle is given once, and the seed is above them all
      const lines = drawing.text.split("\r\n");
      const handles = lines.flatMap((line, n) => (n % 2 === 0 && /^ *(5|105)$/.test(line) ? [lines[n + 1]!] : []));
      const [seed, ...given] = handles.map((hex) => Number.parseInt(hex, 16));
      expect(new Set(given).size).toBe(given.length);
      expect(Math.max(...given)).toBeLessThan(seed!);
    }
  });

  it("close every outline, opening and pocket, and keep arcs as arcs and circles as circles", async () => {
    for (const drawing of (await drawings(mm)).values()) {
      for (const line of drawing.lines) expect(line.closed, line.layer).toBe(true);
    }
    const plate = partDrawing(await drawings(mm), "P1");
    expect(on(plate, /^OUTLINE$/).map(bows)).toEqual([4]);
    expect(on(plate, /^GROOVE-BACK$/).map(bows)).toEqual([4]);
    expect(on(plate, /^HOLE$/).filter(({ round }) => round)).toHaveLength(6);
    expect(on(plate, /^OPENING$/).map(({ round }) => round)).toEqual([true]);
  });

  it("keep blind holes, recesses and bench work off the layers that go through", async () => {
    const all = await drawings(mm);
    expect(on(partDrawing(all, "B1"), /^HOLE-BLIND-FACE$/)).toHaveLength(6);
    expect(on(partDrawing(all, "B1"), /^HOLE$/)).toHaveLength(12);
    expect(on(partDrawing(all, "R1"), /^POCKET-FACE$/)).toHaveLength(2);
    expect(on(partDrawing(all, "R1"), /^EDGE-WORK-FACE-LATER$/)).toHaveLength(1);
  });

  it("do not draw holes that are drilled into an edge, but tell of them in the table", async () => {
    const wall = partDrawing(await drawings(mm), "B3");
    expect(wall.lines.map(({ layer }) => layer)).toEqual(["OUTLINE"]);
    expect(tableWords(wall).join("\n")).toContain(
      "9.1 below the face, pilot for 4.0 x 50 screw\nat (105, 113.6) (315, 113.6)",
    );
    expect(tableWords(wall)).toContain("edge top");
    expect(tableWords(wall)).toContain("33");
  });

  it("lay a part with its back up as its mirror image", async () => {
    const sheet = (await drawings(mm)).get("sheets/plate-offcut-A.dxf")!;
    const [outline] = on(sheet, /^OUTLINE$/);
    const xs = outline!.vertices.map(({ x }) => x);
    const ys = outline!.vertices.map(({ y }) => y);
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual([10, 1037, 10, 857]);
    // the notch opens to the right on the face: to the left here, 249 deep from x = 10
    expect(outline!.vertices.some(({ x, y }) => Math.abs(x - 259) < 1e-6 && Math.abs(y - 563.5) < 1e-6)).toBe(true);
    // the opening is 513.5 from the right edge of a plate of 1027, so it stays where it is
    const [opening] = on(sheet, /^OPENING$/);
    expect(opening!.vertices[0]!.x - 156).toBeCloseTo(10 + 513.5, 6);
  });

  it("turn parts exactly: a wall laid across the sheet keeps its sizes", async () => {
    const sheet = (await drawings(mm)).get("sheets/box-1.dxf")!;
    const across = on(sheet, /^OUTLINE$/).find(({ vertices }) => vertices.every(({ x }) => x >= 1639))!;
    const xs = across.vertices.map(({ x }) => x);
    const ys = across.vertices.map(({ y }) => y);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(113.6, 9);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(383.6, 9);
  });

  it("name every layer they draw on, in a colour that shows on black and on white", async () => {
    for (const drawing of (await drawings(mm)).values()) {
      const used = new Set([...drawing.lines, ...drawing.words].map(({ layer }) => layer));
      expect([...used].filter((layer) => !drawing.layers.includes(layer))).toEqual([]);
      for (const [layer, colour] of Object.entries(drawing.colours)) {
        expect(colour === 7 || contrast(colour) >= 3.5, `${layer} ${colour}`).toBe(true);
      }
    }
  });

  it("bear the build's hash as text and as a comment, and the cautions of cut files", async () => {
    const { hash } = sampleBuild();
    for (const { bytes } of await filesIn(mm)) {
      const drawing = readDxf(bytes);
      expect(tableWords(drawing)).toContain(`build ${hash}`);
      expect(drawing.text).toContain(`999\r\nbuild ${hash}\r\n`);
      expect(tableWords(drawing).join(" ")).toContain("fine dust that harms lungs");
      expect(tableWords(drawing).at(-1)).toContain("Follow local codes");
    }
  });

  it("hold only 7-bit text, a code and a value on alternate lines, whatever a piece is called", async () => {
    for (const { bytes } of await filesIn(mm)) {
      expect(bytes.every((byte) => byte < 0x7f && (byte >= 0x20 || byte === 0x0a || byte === 0x0d))).toBe(true);
      const lines = new TextDecoder().decode(bytes).split("\r\n");
      expect(lines.pop()).toBe("");
      expect(lines.length % 2).toBe(0);
      expect(lines.every((line) => !/[\r\n]/.test(line))).toBe(true);
      expect(lines.filter((_, i) => i % 2 === 0).every((code) => /^ *\d+$/.test(code))).toBe(true);
      expect(lines.slice(-2)).toEqual(["  0", "EOF"]);
    }
  });

  it("draw the blank to cut and the outline to flush to on layers of their own", async () => {
    const build = sampleBuild();
    const top = samplePart("B2");
    const outer = [
      { x: -3, y: -3, bulge: 0, by: "front" },
      { x: 423, y: -3, bulge: 0, by: "right" },
      { x: 423, y: 423, bulge: 0, by: "back" },
      { x: -3, y: 423, bulge: 0, by: "left" },
    ];
    const oversize: Part = { ...top, blank: { outer, holes: [] } };
    const parts = [oversize];
    const files = [
      ...(await dxfExporter.write({ ...build, plan: { ...build.plan, built: { ...build.plan.built, parts } } })),
    ];
    const drawing = readDxf(files.find(({ path }) => path.startsWith("parts/"))!.bytes);
    expect(drawing.lines.map(({ layer }) => layer)).toEqual(["BLANK", "OUTLINE-LATER"]);
    expect(drawing.lines.map((line) => Math.round(areaOfLine(line)))).toEqual([426 * 426, 420 * 420]);
  });
});

/** The least of a colour's contrasts against black and white (WCAG 2.1, relative luminance). */
function contrast(index: number): number {
  const rgb = indexed[index]!;
  const [r, g, b] = [rgb >> 16, (rgb >> 8) & 255, rgb & 255].map((c) => {
    const s = c / 255;
    return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
  });
  const light = 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  return Math.min(1.05 / (light + 0.05), (light + 0.05) / 0.05);
}

/** What the numbers mean, as ezdxf's table of default colours has them (read from ezdxf 0.18.1). */
const indexed: Readonly<Record<number, number>> = {
  1: 0xff0000,
  8: 0x808080,
  20: 0xff3f00,
  32: 0xa55200,
  94: 0x007f00,
  134: 0x007f7f,
  150: 0x007fff,
  200: 0xbf00ff,
  230: 0xff007f,
};
