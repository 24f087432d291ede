import { describe, expect, it } from "vitest";
import type { Page, Text } from "../../../src/drawing/page.js";
import { pageSizes } from "../../../src/drawing/page.js";
import { textWidth, write } from "../../../src/drawing/textBox.js";
import { pdfExporter } from "../../../src/export/pdf/pdfExporter.js";
import { pdfOfPages } from "../../../src/export/pdf/pdfPages.js";
import { sampleBuild } from "../../fixtures/build.js";
import { readPdf } from "../../outside/pdfReader.js";

const about = { title: "(a) title \\ with ) signs", author: "", subject: "", keywords: "" };

function pageWith(texts: readonly Text[]): Page {
  return { title: "page", size: pageSizes.A4, items: texts };
}

async function readBack(text: string): Promise<string> {
  const bytes = await pdfOfPages([pageWith([write({ x: 50, y: 50 }, text)])], about);
  return (await readPdf(bytes)).pages[0]!.texts.map((each) => each.text).join("");
}

describe("pages as a PDF", () => {
  it("are the same bytes each time", async () => {
    const [one] = [...(await pdfExporter.write(sampleBuild()))];
    const [two] = [...(await pdfExporter.write(sampleBuild()))];
    expect(one!.path).toBe("drawings.pdf");
    expect(Buffer.from(one!.bytes).equals(Buffer.from(two!.bytes))).toBe(true);
  });

  it("are the same bytes each time without a date too", async () => {
    const page = [pageWith([write({ x: 50, y: 50 }, "no date")])];
    const [one, two] = [await pdfOfPages(page, about), await pdfOfPages(page, about)];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });

  it("bear the job's day and none where the job has none", async () => {
    const page = [pageWith([])];
    const dated = await readPdf(await pdfOfPages(page, { ...about, date: "2031-04-09" }));
    expect(dated.info["CreationDate"]).toBe("D:20310409000000Z");
    const undated = await readPdf(await pdfOfPages(page, about));
    expect(undated.info["CreationDate"]).toBeUndefined();
    expect(undated.info["Title"]).toBe(about.title);
  });

  it.each(["<script>alert(1)</script>", "]]> (unbalanced \\( % /Name", "quotes \" ' `", "Träger ½ 9/16 ⌀ ×", "Ωλ Жук"])(
    "keep %s as text",
    async (text) => {
      expect(await readBack(text)).toBe(text);
    },
  );

  it("show signs that the font lacks as a replacement that is seen and found", async () => {
    expect(await readBack("a 🚗 b 中 c")).toBe("a \uFFFD b \uFFFD c");
  });

  it("squeeze words whose signs turned out wider than reckoned, so that they keep their room", async () => {
    // the long A Z of Croatian takes more than the whole em that an unknown sign is reckoned with
    const wide = "\u01C4".repeat(12);
    const bytes = await pdfOfPages([pageWith([write({ x: 50, y: 50 }, wide)])], about);
    const [text] = (await readPdf(bytes)).pages[0]!.texts;
    expect(text!.text).toBe(wide);
    expect(text!.width).toBeLessThanOrEqual(textWidth(wide, 2.5) + 0.01);
  });
});
