import type { Extents, Point } from "../geometry/profile.js";
import { beyondAscii, boldWidths, capitalHeight, regularWidths, unitsPerEm } from "./fontWidths.js";
import type { Text } from "./page.js";

/** Base line to base line, in heights of a capital. */
export const lineSpacing = 1.75;

/** How far g, p and y hang below the base line, in heights of a capital. */
const hang = 0.3;

/** A line of text; left, small, level and regular where nothing else is said. */
export function write(at: Point, text: string, style: Partial<Omit<Text, "kind" | "at" | "text">> = {}): Text {
  const { height = 2.5, anchor = "start", turn = 0, bold = false } = style;
  return { kind: "text", at, text: plainText(text), height, anchor, turn, bold };
}

/** Text with no line breaks and none of the marks that steer or hide what stands beside them. */
export function plainText(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ").replace(/[\p{Cf}\p{Cs}\p{Co}\p{Cn}]/gu, "");
}

/**
 * Width of a line of text, mm, for a capital's height. A sign that the table does not hold counts as a whole em, which
 * is more than most need; the writers squeeze a line that comes out longer.
 */
export function textWidth(text: string, height: number, bold = false): number {
  const widths = bold ? boldWidths : regularWidths;
  let units = 0;
  for (const sign of text) units += widths[tableIndex(sign)] ?? unitsPerEm;
  return (units / unitsPerEm) * fontSize(height);
}

/** The font size that gives capitals this height, mm. */
export function fontSize(height: number): number {
  return height / capitalHeight;
}

/** True where the width of every sign is known exactly. */
export function widthIsExact(text: string): boolean {
  return [...text].every((sign) => regularWidths[tableIndex(sign)] !== undefined);
}

/** The paper a text takes, hanging letters included. */
export function boxOf(text: Text): Extents {
  const width = textWidth(text.text, text.height, text.bold);
  const start = text.anchor === "start" ? 0 : text.anchor === "middle" ? -width / 2 : -width;
  const along = { min: start, max: start + width };
  const across = { min: -hang * text.height, max: text.height };
  const { x, y } = text.at;
  return text.turn === 0
    ? { min: { x: x + along.min, y: y + across.min }, max: { x: x + along.max, y: y + across.max } }
    : { min: { x: x - across.max, y: y + along.min }, max: { x: x - across.min, y: y + along.max } };
}

/** The text, or its beginning and an ellipsis, within a width. */
export function shorten(text: string, width: number, height: number, bold = false): string {
  const plain = plainText(text);
  if (textWidth(plain, height, bold) <= width) return plain;
  const signs = [...plain];
  while (signs.length > 0 && textWidth(`${signs.join("")}…`, height, bold) > width) signs.pop();
  return `${signs.join("").trimEnd()}…`;
}

/** Spaces at which a line may end: not within a size, nor before its unit or brackets. */
const unbroken = /(?<! [×x]) +(?!\d+\/\d|× |x \d|mm\b|\()/;
/** Where even such a size is longer than a line: "× 45°" stays whole. */
const loosened = /(?<! [×x]) +/;

/** Lines no wider than `width`: broken at spaces, and within a word only where it is longer than a line. */
export function wrapText(text: string, width: number, height: number, bold = false): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text, width, height, bold)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, height, bold) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const pieces = breakWord(word, width, height, bold);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? "";
  }
  return line === "" ? lines : [...lines, line];
}

/** Words that hang together stay so unless they are longer than a line. */
function wordsOf(text: string, width: number, height: number, bold: boolean): readonly string[] {
  return plainText(text)
    .split(unbroken)
    .flatMap((word) => (textWidth(word, height, bold) <= width ? [word] : word.split(loosened)))
    .filter(Boolean);
}

function breakWord(word: string, width: number, height: number, bold: boolean): readonly string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const sign of word) {
    if (piece !== "" && textWidth(piece + sign, height, bold) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += sign;
  }
  return [...pieces, piece];
}

const asciiCount = 95;
const beyond = new Map([...beyondAscii].map((sign, index) => [sign, asciiCount + index]));

function tableIndex(sign: string): number {
  const code = sign.codePointAt(0) ?? 0;
  return code < 127 ? code - 32 : (beyond.get(sign) ?? -1);
}
