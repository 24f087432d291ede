import { areaOfLoops, boxOfLoops, type Loop } from "./loops.js";

/** A disc inside a shape. */
export type Circle = { readonly x: number; readonly y: number; readonly r: number };

export type CircleLimits = {
  /** Stop when the circles cover this share of the area. */
  readonly cover: number;
  readonly most: number;
};

/**
 * Discs inside the material that do not cover one another: the largest first, each as large as the ones before let it be.
 *
 * Method:   squares of the distance field, refined where the largest possible circle is; a square whose best possible
 *           distance is no better than what is found is dropped. Own derivation.
 * Returns:  at least one.
 */
export function circlesIn(loops: readonly Loop[], limits: CircleLimits): Circle[] {
  const edges = edgesOf(loops);
  const area = areaOfLoops(loops);
  const found: Circle[] = [];
  let covered = 0;
  while (found.length < limits.most && (found.length === 0 || covered < limits.cover * area)) {
    const next = largestCircle(edges, loops, found);
    if (next === undefined || next.r < 0.02 * (found[0]?.r ?? 0)) break;
    found.push(next);
    covered += Math.PI * next.r * next.r;
  }
  return found;
}

function largestCircle(edges: Float64Array, loops: readonly Loop[], taken: readonly Circle[]): Circle | undefined {
  const box = boxOfLoops(loops);
  const size = Math.min(box.x1 - box.x0, box.y1 - box.y0);
  let squares: { x: number; y: number; half: number; reach: number }[] = [];
  let best: Circle | undefined;
  const look = (x: number, y: number, half: number) => {
    const r = clearance(edges, taken, x, y);
    if (r > 0 && (best === undefined || r > best.r)) best = { x, y, r };
    return { x, y, half, reach: r + half * Math.SQRT2 };
  };
  const half = size / 2;
  for (let x = box.x0 + half; x < box.x1 + half; x += size)
    for (let y = box.y0 + half; y < box.y1 + half; y += size) squares.push(look(x, y, half));
  const precision = size * 1e-3;
  for (let depth = 0; depth < 12; depth++) {
    const worth = squares.filter((square) => square.reach > (best?.r ?? 0) * 1.005 + precision);
    if (worth.length === 0) break;
    squares = worth.flatMap((s) => {
      const h = s.half / 2;
      return [
        look(s.x - h, s.y - h, h),
        look(s.x + h, s.y - h, h),
        look(s.x - h, s.y + h, h),
        look(s.x + h, s.y + h, h),
      ];
    });
  }
  return best;
}

/** x1, y1, x2, y2 of every edge. */
function edgesOf(loops: readonly Loop[]): Float64Array {
  return Float64Array.from(
    loops.flatMap((loop) =>
      loop.flatMap((a, i) => {
        const b = loop[(i + 1) % loop.length]!;
        return [a.x, a.y, b.x, b.y];
      }),
    ),
  );
}

/** How large a circle may be about a place: to the nearest edge or circle; negative outside of the material. */
function clearance(edges: Float64Array, taken: readonly Circle[], x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let e = 0; e < edges.length; e += 4) {
    const ax = edges[e]!;
    const ay = edges[e + 1]!;
    const bx = edges[e + 2]!;
    const by = edges[e + 3]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    const dx = bx - ax;
    const dy = by - ay;
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    const px = x - ax - t * dx;
    const py = y - ay - t * dy;
    nearest = Math.min(nearest, px * px + py * py);
  }
  let r = inside ? Math.sqrt(nearest) : -Math.sqrt(nearest);
  for (const circle of taken) r = Math.min(r, Math.sqrt((x - circle.x) ** 2 + (y - circle.y) ** 2) - circle.r);
  return r;
}
