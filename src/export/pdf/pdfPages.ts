import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { lineStyles } from "../../drawing/lines.js";
import type { Bend, Fill, Item, Page, Stroke, Text } from "../../drawing/page.js";
import { fontSize, textWidth } from "../../drawing/textBox.js";
import { curvesOf } from "./curves.js";

/** What a document says of itself. `date`: an ISO 8601 day; the file bears none without one that the calendar knows. */
export type PdfAbout = {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly keywords: string;
  readonly date?: string;
};

type Document = PDFKit.PDFDocument;

/** Points of a PDF in a millimetre: 72 to the inch (ISO 32000-1, 8.3.2.3, from memory). */
const points = 72 / 25.4;

const require = createRequire(import.meta.url);
const fonts = { regular: "DejaVuSansCondensed.ttf", bold: "DejaVuSansCondensed-Bold.ttf" } as const;

/** A PDF of the pages in their true size; the same pages give the same bytes. */
export async function pdfOfPages(pages: readonly Page[], about: PdfAbout): Promise<Uint8Array> {
  const { default: PDFDocument } = await import("pdfkit");
  const made = new Date(`${about.date}T00:00:00Z`);
  const dated = !Number.isNaN(made.getTime());
  const document = new PDFDocument({
    autoFirstPage: false,
    displayTitle: true,
    info: {
      Title: about.title,
      Author: about.author,
      Subject: about.subject,
      Keywords: about.keywords,
      Creator: "Bafflewright",
      // The library makes the file's id of these, and would else ask the clock.
      CreationDate: dated ? made : new Date(0),
    },
  });
  // Without a day the library still wants one to work with, but must not write it.
  if (!dated) Object.defineProperty(document.info, "CreationDate", { enumerable: false });
  for (const [name, file] of Object.entries(fonts)) {
    document.registerFont(name, readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${file}`)));
  }
  const bytes = collect(document);
  for (const page of pages) drawPage(document, page);
  document.end();
  return bytes;
}

function collect(document: Document): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("end", () => resolve(Buffer.concat(chunks)));
    document.on("error", reject);
  });
}

function drawPage(document: Document, page: Page): void {
  document.addPage({ size: [page.size.width * points, page.size.height * points], margin: 0 });
  document.outline.addItem(page.title);
  // From here on millimetres; y is turned over point by point, so that words stay upright.
  document.save().scale(points);
  for (const item of page.items) drawItem(document, item, page.size.height);
  document.restore();
}

function drawItem(document: Document, item: Item, height: number): void {
  switch (item.kind) {
    case "stroke":
      drawStroke(document, item, height);
      break;
    case "fill":
      drawFill(document, item, height);
      break;
    case "text":
      drawText(document, item, height);
  }
}

function drawStroke(document: Document, item: Stroke, height: number): void {
  const { width, dashes } = lineStyles[item.line];
  document.lineWidth(width).lineCap("butt").lineJoin("miter");
  if (dashes.length > 0) document.dash(dashes[0]!, { space: dashes[1]! });
  if (dashes.length > 2) document.addContent(`[${dashes.join(" ")}] 0 d`);
  trace(document, item.path, item.closed, height);
  document.stroke("black");
  if (dashes.length > 0) document.undash();
}

function drawFill(document: Document, item: Fill, height: number): void {
  for (const path of item.paths) trace(document, path, true, height);
  const grey = Math.round(item.grey * 255);
  document.fill([grey, grey, grey], "even-odd");
}

function trace(document: Document, path: readonly Bend[], closed: boolean, height: number): void {
  const [first] = path;
  if (first === undefined) return;
  document.moveTo(first.x, height - first.y);
  const last = closed ? path.length : path.length - 1;
  for (let i = 0; i < last; i++) {
    const to = path[(i + 1) % path.length]!;
    const curves = curvesOf(path[i]!, to);
    if (curves.length === 0) document.lineTo(to.x, height - to.y);
    for (const [a, b, end] of curves) {
      document.bezierCurveTo(a.x, height - a.y, b.x, height - b.y, end.x, height - end.y);
    }
  }
  if (closed) document.closePath();
}

/** One line of text on its base line; squeezed where signs that the drawing could not measure make it too long. */
function drawText(document: Document, item: Text, height: number): void {
  document.font(item.bold ? "bold" : "regular", fontSize(item.height)).fillColor("black");
  const words = withReplacements(document, item.text);
  const room = textWidth(item.text, item.height, item.bold);
  const natural = document.widthOfString(words);
  const squeeze = natural > room + 1e-6 ? room / natural : 1;
  const before = { start: 0, middle: 0.5, end: 1 }[item.anchor] * natural;
  document.save();
  document
    .translate(item.at.x, height - item.at.y)
    .rotate((-item.turn * 180) / Math.PI)
    .scale(squeeze, 1);
  document.text(words, -before, 0, { lineBreak: false, baseline: "alphabetic" });
  document.restore();
}

/** The library keeps the font's table of signs to itself; a sign without a glyph would leave no trace in the text. */
type FontInUse = { readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } } };

function withReplacements(document: Document, text: string): string {
  const { font } = (document as Document & FontInUse)._font;
  return [...text].map((sign) => (font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0) ? sign : "\uFFFD")).join("");
}
