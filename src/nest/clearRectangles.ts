import type { Region } from "../geometry/profile.js";
import type { Box, Rectangle } from "./clearRectangle.js";
import { clearSpans, inBothSpans, type Line, linesOfBox, linesWithin, shadow } from "./clearSpans.js";

/** The least that a rectangle is worth keeping for, its longer side against `length`. mm. */
export type Least = { readonly length: number; readonly width: number };

/** No more rectangles than one would write on a list. */
const most = 6;
/** Places along x at which a region is looked at, beside all its upright edges. */
const places = 160;
const hair = 1e-6;

/**
 * The largest rectangle that lies within the regions, then the largest beside it, and so on: none overlaps another, and
 * a saw's kerf is left between them. Largest first; none smaller than `least`. Sides run along x and y.
 *
 * Method: between every two of some places along x, what is clear all the way across; of a sheet whose parts are
 * rectangles these hold the largest one exactly. Beside slants and arcs its sides are then moved as long as it grows.
 */
export function clearRectangles(regions: readonly Region[], least: Least, kerf: number): readonly Rectangle[] {
  const lines = linesWithin(regions);
  const found: Box[] = [];
  while (found.length < most) {
    const boxes = found.map(({ x0, y0, x1, y1 }) => ({ x0: x0 - kerf, y0: y0 - kerf, x1: x1 + kerf, y1: y1 + kerf }));
    const rough = largestBox(lines, boxes, least);
    if (rough === undefined) break;
    found.push(settled([...lines, ...boxes.flatMap(linesOfBox)], rough, least));
  }
  return found
    .map(({ x0, y0, x1, y1 }): Rectangle => ({ x: x0, y: y0, length: x1 - x0, width: y1 - y0 }))
    .sort((a, b) => b.length * b.width - a.length * a.width);
}

function largestBox(lines: readonly Line[], boxes: readonly Box[], least: Least): Box | undefined {
  const xs = placesAlong(lines, boxes);
  const columns = clearSpans(lines, boxes, xs);
  const end = xs.at(-1) ?? 0;
  let best: Box | undefined;
  for (let i = 0; i < columns.length; i++) {
    let clear = columns[i]!;
    for (let j = i; j < columns.length; j++) {
      if (j > i) clear = inBothSpans(clear, columns[j]!);
      const tallest = clear.reduce((top, { from, to }) => Math.max(top, to - from), 0);
      if (tallest * (end - xs[i]!) <= areaOf(best)) break;
      for (const { from, to } of clear) {
        const box = { x0: xs[i]!, y0: from, x1: xs[j + 1]!, y1: to };
        if (areaOf(box) > areaOf(best) && isWorth(box, least)) best = box;
      }
    }
  }
  return best;
}

/** Upright edges, and places spread evenly between them. */
function placesAlong(lines: readonly Line[], boxes: readonly Box[]): number[] {
  const ends = lines.flatMap(([x0, , x1]) => [x0, x1]);
  const left = ends.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const right = ends.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  if (!(right > left)) return [];
  const upright = lines.filter(([x0, y0, x1, y1]) => Math.abs(x1 - x0) <= hair && Math.abs(y1 - y0) > 1);
  const even = Array.from({ length: places + 1 }, (_, k) => left + ((right - left) * k) / places);
  const all = [...even, ...upright.map(([x]) => x), ...boxes.flatMap(({ x0, x1 }) => [x0, x1])];
  return [...new Set(all)].filter((x) => x >= left && x <= right).sort((a, b) => a - b);
}

/** A clear box with its sides moved out as far as they go, and on, where moving one in lets others go farther. */
function settled(lines: readonly Line[], rough: Box, least: Least): Box {
  let best = grown(lines, rough, sides);
  const size = Math.max(rough.x1 - rough.x0, rough.y1 - rough.y0);
  for (let step = size / 16; step > 0.01; ) {
    const tries = sides.flatMap((side) => {
      const less = movedIn(best, side, step);
      return less === undefined
        ? []
        : orders.map((order) =>
            grown(
              lines,
              less,
              order.filter((one) => one !== side),
            ),
          );
    });
    const next = tries.reduce((a, b) => (areaOf(b) > areaOf(a) + hair && isWorth(b, least) ? b : a), best);
    if (next === best) step /= 2;
    best = next;
  }
  return best;
}

type Side = "x0" | "x1" | "y0" | "y1";
const sides: readonly Side[] = ["x1", "y1", "x0", "y0"];
const orders: readonly (readonly Side[])[] = [sides, ["y1", "x1", "y0", "x0"]];

function movedIn(box: Box, side: Side, by: number): Box | undefined {
  const less = { ...box, [side]: box[side] + (side === "x0" || side === "y0" ? by : -by) };
  return less.x1 > less.x0 && less.y1 > less.y0 ? less : undefined;
}

/** Moves one side after the other out to the first line in its way. */
function grown(lines: readonly Line[], box: Box, order: readonly Side[]): Box {
  let at = box;
  for (const side of order) at = { ...at, [side]: reachOf(lines, at, side) };
  return at;
}

function reachOf(lines: readonly Line[], box: Box, side: Side): number {
  const axis = side === "x0" || side === "x1" ? "x" : "y";
  const [from, to] = axis === "x" ? [box.y0, box.y1] : [box.x0, box.x1];
  const middle = axis === "x" ? (box.x0 + box.x1) / 2 : (box.y0 + box.y1) / 2;
  const outward = side === "x1" || side === "y1";
  const shadows = lines.flatMap((line) => shadow(line, from + hair, to - hair, axis) ?? []);
  const ahead = shadows.map((span) => (outward ? span.from : span.to)).filter((at) => at > middle === outward);
  const reach = outward ? Math.min(...ahead) : Math.max(...ahead);
  return Number.isFinite(reach) ? reach : box[side];
}

function isWorth({ x0, y0, x1, y1 }: Box, { length, width }: Least): boolean {
  const long = Math.max(x1 - x0, y1 - y0);
  const short = Math.min(x1 - x0, y1 - y0);
  return long >= length - hair && short >= width - hair;
}

const areaOf = (box: Box | undefined): number => (box === undefined ? 0 : (box.x1 - box.x0) * (box.y1 - box.y0));
