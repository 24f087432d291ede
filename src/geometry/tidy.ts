import { arcOf, sweepOfBulge } from "./arc.js";
import type { Profile, Vertex } from "./profile.js";
import { tolerance } from "./tolerance.js";

/**
 * A closed loop without the places where one edge was cut for nothing: neighbours of the same name on one line, or on
 * one circle and together no more than half a turn, become one edge again.
 */
export function mergeRuns(loop: readonly Vertex[]): Profile {
  const n = loop.length;
  if (n <= 2) return loop.map(plain);
  const start = Math.max(
    0,
    loop.findIndex((v, i) => joined(loop[(i + n - 1) % n]!, v, loop[(i + 1) % n]!) === undefined),
  );
  const kept: Vertex[] = [];
  for (let i = 0; i < n; i++) {
    const v = loop[(start + i) % n]!;
    const next = loop[(start + i + 1) % n]!;
    const before = kept[kept.length - 1];
    const whole = before === undefined ? undefined : joined(before, v, next);
    if (before === undefined || whole === undefined) kept.push(plain(v));
    else kept[kept.length - 1] = { ...before, bulge: whole };
  }
  return kept;
}

/** The same for an open chain; its ends stay. */
export function mergePath(path: readonly Vertex[]): Vertex[] {
  const kept: Vertex[] = [];
  path.forEach((v, i) => {
    const next = path[i + 1];
    const before = kept[kept.length - 1];
    const whole = before === undefined || next === undefined ? undefined : joined(before, v, next);
    if (before === undefined || whole === undefined) kept.push(plain(v));
    else kept[kept.length - 1] = { ...before, bulge: whole };
  });
  return kept;
}

function plain(v: Vertex): Vertex {
  return { x: v.x, y: v.y, bulge: v.bulge === 0 ? 0 : v.bulge, by: v.by };
}

/** Bulge of the one edge from `a` over `b` to `c`; undefined where they are two. */
function joined(a: Vertex, b: Vertex, c: Vertex): number | undefined {
  if (a.by !== b.by) return undefined;
  if (a.bulge === 0 && b.bulge === 0) return straight(a, b, c) ? 0 : undefined;
  if (a.bulge * b.bulge <= 0) return undefined;
  const sweep = sweepOfBulge(a.bulge) + sweepOfBulge(b.bulge);
  if (Math.abs(sweep) > Math.PI + 1e-9) return undefined;
  const one = arcOf(a, b);
  const two = arcOf(b, c);
  const off = Math.hypot(one.center.x - two.center.x, one.center.y - two.center.y) + Math.abs(one.radius - two.radius);
  // the centres of short arcs are known less well than the arcs: what counts is how far the bow would move
  const share = Math.min(1, Math.abs(Math.tan(sweep / 4)));
  return off * share <= 10 * tolerance.touch ? Math.tan(sweep / 4) : undefined;
}

function straight(a: Vertex, b: Vertex, c: Vertex): boolean {
  const dx = c.x - a.x;
  const dy = c.y - a.y;
  const length = Math.hypot(dx, dy);
  const along = (b.x - a.x) * dx + (b.y - a.y) * dy;
  const off = Math.abs((b.x - a.x) * dy - (b.y - a.y) * dx);
  return along > 0 && along < length * length && off <= tolerance.touch * length;
}
