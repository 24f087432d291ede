import type { Point } from "../../geometry/profile.js";
import type { Loop } from "./loops.js";

/** The loop with fewer corners: those left out lie within `by` of the new edges. A loop that would vanish stays as it is. */
export function coarseLoop(loop: Loop, by: number): Loop {
  const kept: Point[] = [];
  for (let i = 0; i < loop.length; ) {
    kept.push(loop[i]!);
    let end = i + 1;
    while (end < loop.length && liesAlong(loop, i, end + 1, by)) end++;
    i = end;
  }
  return kept.length >= 3 ? kept : loop;
}

/** Whether all corners between two of them lie near the line from one to the other. */
function liesAlong(loop: Loop, from: number, to: number, by: number): boolean {
  const a = loop[from]!;
  const b = loop[to % loop.length]!;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  for (let k = from + 1; k < to; k++) {
    const px = loop[k]!.x - a.x;
    const py = loop[k]!.y - a.y;
    const t = square > 0 ? Math.max(0, Math.min(1, (px * dx + py * dy) / square)) : 0;
    if ((px - t * dx) ** 2 + (py - t * dy) ** 2 > by * by) return false;
  }
  return true;
}
