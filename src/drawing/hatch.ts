import type { Region } from "../geometry/profile.js";
import { tessellate } from "../geometry/tessellate.js";
import type { Stroke } from "./page.js";
import { lineThrough } from "./shapes.js";

/** Chords of arcs, mm of paper: finer than a line is wide. */
const chord = 0.1;

/** Narrow lines at 45° over a region of paper, its holes left out, so many mm apart. ISO 128 (from memory). */
export function hatch({ outer, holes }: Region, apart: number): readonly Stroke[] {
  const edges = [outer, ...holes].flatMap((loop) => {
    const points = tessellate(loop, chord);
    return points.map((a, i) => [a, points[(i + 1) % points.length]!] as const);
  });
  const step = apart * Math.SQRT2;
  const offsets = edges.map(([a]) => a.y - a.x);
  const first = Math.ceil(Math.min(...offsets) / step);
  const last = Math.floor(Math.max(...offsets) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => (first + k) * step).flatMap((offset) => {
    const xs = edges
      .flatMap(([a, b]) => {
        const [da, db] = [a.y - a.x - offset, b.y - b.x - offset];
        return da > 0 === db > 0 ? [] : [a.x + ((b.x - a.x) * da) / (da - db)];
      })
      .sort((p, q) => p - q);
    const at = (x: number) => ({ x, y: x + offset });
    return xs.flatMap((x, i) =>
      i % 2 === 0 && i + 1 < xs.length ? [lineThrough([at(x), at(xs[i + 1]!)], "narrow")] : [],
    );
  });
}
