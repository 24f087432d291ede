import { describe, expect, it } from "vitest";
import { pageSizes } from "../../../src/drawing/page.js";
import { boxAt, filledBox, lineThrough } from "../../../src/drawing/shapes.js";
import { write } from "../../../src/drawing/textBox.js";
import { svgOfPage } from "../../../src/export/svg/svgOfPage.js";
import { pagesOf } from "../../drawing/pages.js";
import { sampleBuild } from "../../fixtures/build.js";
import { readSvg } from "./svgReader.js";

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

describe("a drawing page as SVG", () => {
  it("is as large as its paper and turns y over", async () => {
    const line = lineThrough(
      [
        { x: 20, y: 10 },
        { x: 30, y: 10 },
      ],
      "visible",
    );
    const bytes = await svgOfPage({ title: "t", size: pageSizes.A4, items: [line] });
    expect(readSvg(bytes).viewBox).toBe("0 0 297 210");
    expect(text(bytes)).toContain('d="M20 200L30 200"');
    expect(text(bytes)).toContain('stroke-width="0.5"');
  });

  it("keeps words as words, turned ones too, and greys as greys", async () => {
    const items = [filledBox(boxAt(0, 0, 5, 5), 0.5), write({ x: 10, y: 10 }, "<b>&", { turn: Math.PI / 2 })];
    const bytes = await svgOfPage({ title: "<title>", size: pageSizes.A4, items });
    const svg = readSvg(bytes);
    expect(svg.texts).toEqual(["<b>&"]);
    expect(svg.title).toBe("<title>");
    expect(text(bytes)).toContain('transform="rotate(-90 10 200)"');
    expect(text(bytes)).toContain('fill="#808080"');
  });

  it("writes every page of a job, also when several are written at once", async () => {
    const pages = pagesOf(sampleBuild());
    const together = await Promise.all(pages.map((page) => svgOfPage(page)));
    for (const [i, page] of pages.entries()) {
      const svg = readSvg(together[i]!);
      expect(svg.title).toBe(page.title);
      expect(svg.texts.length).toBe(page.items.filter(({ kind }) => kind === "text").length);
    }
  });
});
