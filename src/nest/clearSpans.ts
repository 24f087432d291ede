import type { Region } from "../geometry/profile.js";
import type { Box } from "./clearRectangle.js";
import { around } from "./shapes/grown.js";

/** A straight piece of a boundary: x, y, x, y. */
export type Line = readonly [number, number, number, number];

/** A stretch of y. */
export type Span = { readonly from: number; readonly to: number };

/** How far a polygon may keep within an arc, mm. */
const off = 0.02;

/** The boundary of regions as straight pieces that never leave them. */
export function linesWithin(regions: readonly Region[]): Line[] {
  return regions.flatMap(({ outer, holes }) => [
    ...linesOf(around(outer, -1, off)),
    ...holes.flatMap((hole) => linesOf(around(hole, 1, off))),
  ]);
}

export function linesOfBox({ x0, y0, x1, y1 }: Box): Line[] {
  return [
    [x0, y0, x1, y0],
    [x1, y0, x1, y1],
    [x1, y1, x0, y1],
    [x0, y1, x0, y0],
  ];
}

function linesOf(points: readonly { readonly x: number; readonly y: number }[]): Line[] {
  return points.map((a, i): Line => {
    const b = points[(i + 1) % points.length]!;
    return [a.x, a.y, b.x, b.y];
  });
}

/** What a line covers of one axis between two places of the other; undefined where it only touches or misses the band. */
export function shadow(line: Line, from: number, to: number, axis: "x" | "y"): Span | undefined {
  const [a0, b0, a1, b1] = axis === "x" ? [line[0], line[1], line[2], line[3]] : [line[1], line[0], line[3], line[2]];
  if (Math.max(b0, b1) <= from || Math.min(b0, b1) >= to) return undefined;
  const at = (a: number, b: number) => {
    const within = Math.max(from, Math.min(to, b));
    return within === b ? a : a0 + ((a1 - a0) * (within - b0)) / (b1 - b0);
  };
  const [one, other] = [at(a0, b0), at(a1, b1)];
  return { from: Math.min(one, other), to: Math.max(one, other) };
}

/**
 * Between each two of some places along x, the stretches of y that lie within the regions all the way across, clear of
 * the boxes. `lines` bound the regions, each crossed once from without to within.
 */
export function clearSpans(lines: readonly Line[], boxes: readonly Box[], xs: readonly number[]): Span[][] {
  return xs.slice(1).map((x1, k) => {
    const x0 = xs[k]!;
    const near = lines.filter((line) => Math.max(line[0], line[2]) > x0 && Math.min(line[0], line[2]) < x1);
    const middle = (x0 + x1) / 2;
    const crossings = near.flatMap((line) => crossingAt(line, middle)).sort((a, b) => a - b);
    const covered = near.flatMap((line) => shadow(line, x0, x1, "y") ?? []);
    const taken = boxes.filter((box) => box.x0 < x1 && box.x1 > x0).map((box): Span => ({ from: box.y0, to: box.y1 }));
    return between([...covered, ...taken]).filter((span) => {
      const y = (span.from + span.to) / 2;
      return crossings.filter((crossing) => crossing < y).length % 2 === 1;
    });
  });
}

function crossingAt([ax, ay, bx, by]: Line, x: number): number[] {
  return ax > x === bx > x ? [] : [ay + ((by - ay) * (x - ax)) / (bx - ax)];
}

/** What some spans leave between the first and the last of them. */
function between(spans: readonly Span[]): Span[] {
  const sorted = [...spans].sort((a, b) => a.from - b.from);
  const clear: Span[] = [];
  let end = sorted[0]?.to ?? 0;
  for (const { from, to } of sorted) {
    if (from > end) clear.push({ from: end, to: from });
    end = Math.max(end, to);
  }
  return clear;
}

/** What lies in both of two lists, each in ascending order. */
export function inBothSpans(a: readonly Span[], b: readonly Span[]): Span[] {
  const common: Span[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    const from = Math.max(a[i]!.from, b[j]!.from);
    const to = Math.min(a[i]!.to, b[j]!.to);
    if (to > from) common.push({ from, to });
    if (a[i]!.to < b[j]!.to) i++;
    else j++;
  }
  return common;
}
