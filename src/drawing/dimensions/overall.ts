import type { Extents, Point } from "../../geometry/profile.js";
import type { Item, Text } from "../page.js";
import { arrowHead, lineThrough } from "../shapes.js";
import { textWidth, write } from "../textBox.js";

const height = 3.5;
const small = 2.5;
/** From the view or its lane to the dimension's line, and how far the extension lines go on. */
const toLine = 4;
const goesOn = 1.5;
/** Arrows stand outside a line shorter than this. */
const arrowsInside = 7;

/** What the width over all takes above its view or lane, mm of paper. */
export const overallWidthDepth = toLine + goesOn + height + 1.5;

/** What the height over all takes beside its view or lane: more where its words are longer than its line. */
export function overallHeightDepth(words: string, length: number): number {
  if (fitting(words, length) !== undefined) return toLine + height + 2.5;
  return toLine + goesOn + 1 + Math.max(...inLines(words).map((line) => textWidth(line, small)));
}

/** The width over all, above a box of paper; `start`: where its lane ends. */
export function overallWidth(box: Extents, start: number, words: string): readonly Item[] {
  const line = start + toLine;
  const size = fitting(words, box.max.x - box.min.x);
  // Words wider than their line stand clear of the ends of the extension lines.
  const at = { x: (box.min.x + box.max.x) / 2, y: line + (size === undefined ? goesOn + 0.8 : 1) };
  return [
    ...dimensionLine([box.min.x, box.max.x], box.max.y, line, 1, (along, across) => ({ x: along, y: across })),
    write(at, words, { height: size ?? small, anchor: "middle" }),
  ];
}

/** The height over all, to the right of a box (`out` 1) or to its left (-1). */
export function overallHeight(box: Extents, start: number, words: string, out: 1 | -1): readonly Item[] {
  const edge = out === 1 ? box.max.x : box.min.x;
  const size = fitting(words, box.max.y - box.min.y);
  // Upright words are read from the right and stand to the left of their line.
  const line = start + out * (size !== undefined && out === 1 ? toLine + height : toLine);
  const point = (along: number, across: number): Point => ({ x: across, y: along });
  const middle = (box.min.y + box.max.y) / 2;
  const text: readonly Text[] =
    size === undefined
      ? besideLine(words, { x: line + out * (goesOn + 0.5), y: middle }, out)
      : [write({ x: line - 1, y: middle }, words, { height: size, anchor: "middle", turn: Math.PI / 2 })];
  return [...dimensionLine([box.min.y, box.max.y], edge, line, out, point), ...text];
}

/** The largest height at which words stand over a line; none where even small ones are too long. */
function fitting(words: string, length: number): number | undefined {
  return [height, small].find((each) => textWidth(words, each) + 2 <= length);
}

function inLines(words: string): readonly string[] {
  return words.split(/ (?=\[)/);
}

function besideLine(words: string, at: Point, out: 1 | -1): readonly Text[] {
  const lines = inLines(words);
  const step = small * 1.6;
  return lines.map((line, i) =>
    write({ x: at.x, y: at.y - small / 2 - step * (i - (lines.length - 1) / 2) }, line, {
      height: small,
      anchor: out === 1 ? "start" : "end",
    }),
  );
}

/** Two extension lines and the line with its arrows. `point` puts a place along and across on paper. */
function dimensionLine(
  [from, to]: readonly [number, number],
  edge: number,
  line: number,
  out: 1 | -1,
  point: (along: number, across: number) => Point,
): readonly Item[] {
  const extension = (along: number) =>
    lineThrough([point(along, edge + out * 0.8), point(along, line + out * goesOn)], "narrow");
  const [origin, ahead] = [point(0, 0), point(1, 0)];
  const angle = Math.atan2(ahead.y - origin.y, ahead.x - origin.x);
  const inside = to - from >= arrowsInside;
  const reach = inside ? 0 : 5;
  return [
    extension(from),
    extension(to),
    lineThrough([point(from - reach, line), point(to + reach, line)], "narrow"),
    arrowHead(point(from, line), inside ? angle + Math.PI : angle),
    arrowHead(point(to, line), inside ? angle : angle + Math.PI),
  ];
}
