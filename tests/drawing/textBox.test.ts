import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { beyondAscii } from "../../src/drawing/fontWidths.js";
import { boxOf, fontSize, plainText, shorten, textWidth, wrapText, write } from "../../src/drawing/textBox.js";

const require = createRequire(import.meta.url);
const fontFile = (name: string) => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);

describe("the width of words", () => {
  it("is that of the font's own tables, read by the PDF library, for every sign in the table", () => {
    const document = new PDFDocument({ autoFirstPage: false });
    const signs = [...Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)), ...beyondAscii];
    for (const [bold, file] of [
      [false, "DejaVuSansCondensed"],
      [true, "DejaVuSansCondensed-Bold"],
    ] as const) {
      document.font(fontFile(file), fontSize(10));
      for (const sign of signs) expect(textWidth(sign, 10, bold)).toBeCloseTo(document.widthOfString(sign), 6);
    }
  });

  it("is never less than the font's where letters lie closer together in pairs", () => {
    const document = new PDFDocument({ autoFirstPage: false }).font(fontFile("DejaVuSansCondensed"), fontSize(2.5));
    for (const words of ["AVAYTo LTV", "fitted fluffy office", '11 5/8" × 40 7/16"']) {
      expect(textWidth(words, 2.5)).toBeGreaterThanOrEqual(document.widthOfString(words) - 1e-9);
    }
  });

  it("gives capitals the height asked for: 1493 of 2048 units in this font", () => {
    expect(fontSize(1493)).toBeCloseTo(2048, 9);
  });
});

describe("words set in a room", () => {
  it("break into lines no wider than the room and lose nothing", () => {
    const words = 'Covering: carpet 3.5 mm (9/64") thick goes round all edges, 1 9/16" [40] on to the back';
    const lines = wrapText(words, 40, 2.5);
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(40);
    expect(lines.join(" ")).toBe(words);
    expect(lines.length).toBeGreaterThan(2);
  });

  it("never break a size between its whole number and its fraction", () => {
    for (let width = 16; width < 40; width++) {
      for (const line of wrapText('a 16 9/16" b 4 1/2" c', width, 2.5)) expect(line).not.toMatch(/(^|\s)\d+$/);
    }
  });

  it("never break a fastener's or a chamfer's size at its sign", () => {
    for (let width = 26; width < 70; width++) {
      for (const line of wrapText('pilot for 4.0 x 25 screw, 8 mm (5/16") × 45°', width, 2.5)) {
        expect(line).not.toMatch(/(^|\s)[x×]$|^[x×](\s|$)/);
      }
    }
    expect(wrapText('8 mm (5/16") × 45°', 25, 2.5)).toEqual(['8 mm (5/16")', "× 45°"]);
  });

  it("break within a word that is longer than a line", () => {
    const lines = wrapText("x".repeat(100), 20, 2.5);
    expect(lines.join("")).toBe("x".repeat(100));
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(20);
  });

  it("end in an ellipsis where only one line has room", () => {
    const short = shorten("Cargo floor and woofer box, estate car", 30, 2.5);
    expect(short).toMatch(/^Cargo.*…$/);
    expect(textWidth(short, 2.5)).toBeLessThanOrEqual(30);
    expect(shorten("short", 30, 2.5)).toBe("short");
  });

  it("take a box that turns with them", () => {
    const level = boxOf(write({ x: 10, y: 20 }, "420", { anchor: "middle" }));
    const upright = boxOf(write({ x: 10, y: 20 }, "420", { anchor: "middle", turn: Math.PI / 2 }));
    expect(level.max.x - level.min.x).toBeCloseTo(upright.max.y - upright.min.y, 9);
    // read from the right: the base line is the right-hand side, and what stands up lies to the left of it
    expect(upright.min.x).toBeCloseTo(10 - 2.5, 9);
    expect(upright.max.x).toBeGreaterThan(10);
  });
});

describe("plain text", () => {
  it("keeps what is read and drops what steers: line ends, direction marks, joiners, lone surrogates", () => {
    expect(plainText("a\r\nb\u2028c\u0000d")).toBe("a b c d");
    expect(plainText("safe\u202Egnp.exe\u200D\uD800")).toBe("safegnp.exe");
    expect(plainText("<b> ]]> \"'() שלום Ωλ")).toBe("<b> ]]> \"'() שלום Ωλ");
  });
});
