import type { Extents, Point } from "../../geometry/profile.js";
import type { Item } from "../page.js";
import { arrowHead, lineThrough } from "../shapes.js";
import { write } from "../textBox.js";

/** What an overall dimension takes beside its view or lane, mm of paper. */
export const overallDepth = 9;

const height = 3.5;
const toLine = 3;

/** The width over all, above a box of paper; `start`: where lanes already end. */
export function overallWidth(box: Extents, start: number, words: string): readonly Item[] {
  return dimension(box.min.x, box.max.x, box.max.y, start, words, (along, across) => ({ x: along, y: across }), 0);
}

/** The height over all, to the right of a box (`out` 1) or to its left (-1). */
export function overallHeight(box: Extents, start: number, words: string, out: 1 | -1): readonly Item[] {
  const edge = out === 1 ? box.max.x : box.min.x;
  const flip = (along: number, across: number): Point => ({ x: across, y: along });
  return dimension(box.min.y, box.max.y, edge, start, words, flip, Math.PI / 2, out);
}

function dimension(
  from: number,
  to: number,
  edge: number,
  start: number,
  words: string,
  point: (along: number, across: number) => Point,
  turn: number,
  out = 1,
): readonly Item[] {
  const line = start + out * toLine;
  const beyond = line + out * 1.5;
  const angle = (way: number) => (turn === 0 ? (way > 0 ? 0 : Math.PI) : way > 0 ? Math.PI / 2 : -Math.PI / 2);
  // Level text stands over its line; upright text, read from the right, to the left of it.
  const base = turn === 0 ? line + 1 : line - 1;
  return [
    lineThrough([point(from, edge + out * 0.8), point(from, beyond)], "narrow"),
    lineThrough([point(to, edge + out * 0.8), point(to, beyond)], "narrow"),
    lineThrough([point(from, line), point(to, line)], "narrow"),
    arrowHead(point(from, line), angle(-1)),
    arrowHead(point(to, line), angle(1)),
    write(point((from + to) / 2, base), words, { height, anchor: "middle", turn }),
  ];
}
