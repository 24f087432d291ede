import { beforeAll, describe, expect, it } from "vitest";
import { pdfExporter } from "../../src/export/pdf/pdfExporter.js";
import { sampleBuild } from "../fixtures/build.js";
import { type ReadPage, readPdf } from "./pdfReader.js";

// Reader: pdfjs-dist. Sizes: ISO 216 and ASME Y14.1 paper; ISO 5455 scales (from memory).

let pages: readonly ReadPage[];
let inches: readonly ReadPage[];

async function drawings(build = sampleBuild()): Promise<readonly ReadPage[]> {
  const [file] = [...(await pdfExporter.write(build))];
  return (await readPdf(file!.bytes)).pages;
}

beforeAll(async () => {
  pages = await drawings();
  inches = await drawings(sampleBuild({ unit: "in", denominator: 16 }));
}, 60_000);

const words = (page: ReadPage) => page.texts.map(({ text }) => text);
const titled = (list: readonly ReadPage[], title: string) => list.find((page) => words(page).includes(title))!;
const widths = (page: ReadPage) => page.strokes.map(({ minX, maxX }) => maxX - minX);
/** Boxes stroked with the wide line of visible edges, 0.5 mm. */
const outlines = (page: ReadPage) => page.strokes.filter(({ lineWidth }) => Math.abs(lineWidth - 0.5) < 0.001);

describe("drawings.pdf, read back", () => {
  it("has pages of true paper sizes", () => {
    const sizes = new Set(pages.map(({ width, height }) => `${width.toFixed(1)} x ${height.toFixed(1)}`));
    expect(sizes).toEqual(new Set(["297.0 x 210.0", "420.0 x 297.0"]));
    const american = new Set(
      inches.map(({ width, height }) => `${(width / 25.4).toFixed(2)} x ${(height / 25.4).toFixed(2)}`),
    );
    expect(american).toEqual(new Set(["11.00 x 8.50", "17.00 x 11.00"]));
  });

  it("has on every page a bar of 100.00 mm and one of 4 in", () => {
    for (const page of [...pages, ...inches]) {
      expect(widths(page).some((width) => Math.abs(width - 100) < 0.005)).toBe(true);
      expect(widths(page).some((width) => Math.abs(width - 101.6) < 0.005)).toBe(true);
    }
  });

  it("has a frame 20 mm from the filing edge and 10 mm from the others (ISO 5457, from memory)", () => {
    for (const page of pages) {
      const frame = page.strokes.find(({ lineWidth }) => Math.abs(lineWidth - 0.7) < 0.001)!;
      expect([frame.minX, frame.minY, page.width - frame.maxX, page.height - frame.maxY]).toEqual(
        [20, 10, 10, 10].map((margin) => expect.closeTo(margin, 2)),
      );
    }
  });

  it.each([
    ["B1 box top", 420, 420, 5],
    ["B3 box left, box right", 420, 113.6, 5],
    ["P1 plate", 1027, 847, 5],
    ["R1 ring", 310, 310, 2.5],
  ])("draws %s within 0.02 mm of its size at the scale it names", (title, width, height, reduction) => {
    const page = titled(pages, title);
    expect(words(page)).toContain(`1:${reduction}`);
    const found = outlines(page).some(
      (box) =>
        Math.abs(box.maxX - box.minX - width / reduction) < 0.02 &&
        Math.abs(box.maxY - box.minY - height / reduction) < 0.02,
    );
    expect(found).toBe(true);
  });

  it("draws a sheet and the parts on it to scale", () => {
    const page = titled(pages, "Sheet box 1");
    expect(words(page)).toContain("1:10");
    const has = (width: number, height: number) =>
      outlines(page).some(
        (box) =>
          Math.abs(box.maxX - box.minX - width / 10) < 0.02 && Math.abs(box.maxY - box.minY - height / 10) < 0.02,
      );
    expect(has(2440, 1220)).toBe(true);
    expect(has(420, 420)).toBe(true);
    expect(has(113.6, 383.6)).toBe(true);
  });

  it("has every number of the box top as text that can be searched for", () => {
    const texts = words(titled(pages, "B1 box top"));
    for (const number of ["420", "9.1", "35", "210", "385", "410.9", "105", "315"]) expect(texts).toContain(number);
  });

  it("starts every text within the frame", () => {
    for (const page of [...pages, ...inches]) {
      for (const { x, y } of page.texts) {
        expect(x).toBeGreaterThan(20);
        expect(y).toBeGreaterThan(10);
        expect(x).toBeLessThan(page.width - 10);
        expect(y).toBeLessThan(page.height - 10);
      }
    }
  });

  it("shows the hostile name of a piece as the words it is", () => {
    const texts = pages.flatMap(words).join(" ");
    expect(texts).toContain("=SUM(A1:A9)");
    expect(texts).toContain("<b>%%c & Ωλ 50°");
  });
});
