import { nearestOnPath } from "./distance.js";
import type { Path, Point, Vertex } from "./profile.js";

export type BiarcOptions = {
  /** How far the arcs may stand off the points, mm; 0 goes through every one. */
  readonly within: number;
  /** The name of the edges. */
  readonly by: string;
  /** rad: where the run of points turns by more it has a corner, which stays. */
  readonly corner?: number;
  /** Whether the last point runs on to the first. */
  readonly closed?: boolean;
};

/** Arcs that run smoothly into one another, and the farthest that a point lies from them, mm. */
export type Fitted = { readonly path: Path; readonly deviation: number };

/**
 * Arcs through or near measured points: a curve that a machine can follow. Of a closed run the path ends where it starts.
 *
 * 1. The direction at each point is that of the circle through it and its two neighbours; at an end or a corner, of the
 *    circle through the next two.
 * 2. From a point on, take the farthest one that two arcs reach, tangent to the directions at both ends and to each other,
 *    with every point between no farther off than allowed.
 *
 * Source: K. M. Bolton, "Biarc curves", Computer-Aided Design 7(2), 1975, with both arms of one length; from memory.
 */
export function fitBiarcs(points: readonly Point[], options: BiarcOptions): Fitted {
  const distinct = points.filter((p, i) => i === 0 || p.x !== points[i - 1]!.x || p.y !== points[i - 1]!.y);
  const run = options.closed === true && distinct.length > 0 ? [...distinct, distinct[0]!] : distinct;
  const path: Vertex[] = [];
  for (const smooth of smoothRuns(run, options)) {
    const directions = directionsOf(smooth, options.closed === true && smooth.length === run.length);
    let from = 0;
    while (from < smooth.length - 1) {
      const to = farthest(smooth, directions, from, options);
      path.push(...biarc(smooth[from]!, directions[from]!, smooth[to]!, directions[to]!, options.by));
      from = to;
    }
  }
  const last = run[run.length - 1];
  if (last !== undefined) path.push({ x: last.x, y: last.y, bulge: 0, by: options.by });
  return { path, deviation: Math.max(0, ...points.map((p) => nearestOnPath(path, p)?.distance ?? 0)) };
}

/** Two arcs from `a` to `b` along the unit directions there, tangent to each other; one line where all is straight. */
export function biarc(a: Point, along: Point, b: Point, onward: Point, by: string): Vertex[] {
  const vx = b.x - a.x;
  const vy = b.y - a.y;
  const square = vx * vx + vy * vy;
  const bend = 2 * (1 - along.x * onward.x - along.y * onward.y);
  const reach = vx * (along.x + onward.x) + vy * (along.y + onward.y);
  // the arms' length d from  bend d^2 + 2 reach d = v^2, in the form that stays sound where bend is near 0
  const root = reach + Math.sqrt(Math.max(0, reach * reach + bend * square));
  const arm = root > 0 ? square / root : Number.POSITIVE_INFINITY;
  if (!Number.isFinite(arm)) return [{ x: a.x, y: a.y, bulge: 0, by }];
  const joint = { x: (a.x + b.x + arm * (along.x - onward.x)) / 2, y: (a.y + b.y + arm * (along.y - onward.y)) / 2 };
  const first = bulgeFrom(along, { x: joint.x - a.x, y: joint.y - a.y });
  const second = bulgeFrom({ x: b.x - joint.x, y: b.y - joint.y }, onward);
  if (first === 0 && second === 0) return [{ x: a.x, y: a.y, bulge: 0, by }];
  return [
    { x: a.x, y: a.y, bulge: first, by },
    { ...joint, bulge: second, by },
  ];
}

/** Half the sweep is the angle between chord and tangent: a quarter of the sweep is half of that. */
function bulgeFrom(u: Point, v: Point): number {
  const angle = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
  return Math.abs(angle) < 1e-12 ? 0 : Math.tan(angle / 2);
}

/** Parts between corners; a corner ends one and starts the next. */
function smoothRuns(points: readonly Point[], { corner = Math.PI / 5 }: BiarcOptions): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  points.forEach((p, i) => {
    run.push(p);
    const before = points[i - 1];
    const after = points[i + 1];
    if (before === undefined || after === undefined || Math.abs(turnOf(before, p, after)) <= corner) return;
    runs.push(run);
    run = [p];
  });
  if (run.length > 1) runs.push(run);
  return runs;
}

function turnOf(a: Point, p: Point, b: Point): number {
  const u = { x: p.x - a.x, y: p.y - a.y };
  const v = { x: b.x - p.x, y: b.y - p.y };
  return Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
}

function directionsOf(points: readonly Point[], closed: boolean): Point[] {
  const n = points.length;
  const inner = points.map((p, i): Point | undefined => {
    if (i > 0 && i < n - 1) return tangentAt(points[i - 1]!, p, points[i + 1]!);
    return closed && n > 2 ? tangentAt(points[n - 2]!, points[0]!, points[1]!) : undefined;
  });
  return inner.map((direction, i) => {
    if (direction !== undefined) return direction;
    const other = i === 0 ? 1 : n - 2;
    const chord = unit(points[other]!.x - points[i]!.x, points[other]!.y - points[i]!.y);
    const there = inner[other];
    const forward = i === 0 ? chord : { x: -chord.x, y: -chord.y };
    return there === undefined ? forward : reflected(there, forward);
  });
}

/** The direction in `p` of the circle through three points: its angle to either chord grows with that chord. */
function tangentAt(a: Point, p: Point, b: Point): Point {
  const one = Math.hypot(p.x - a.x, p.y - a.y);
  const two = Math.hypot(b.x - p.x, b.y - p.y);
  return unit(
    ((p.x - a.x) / one) * two + ((b.x - p.x) / two) * one,
    ((p.y - a.y) / one) * two + ((b.y - p.y) / two) * one,
  );
}

function reflected(direction: Point, chord: Point): Point {
  const along = 2 * (direction.x * chord.x + direction.y * chord.y);
  return { x: along * chord.x - direction.x, y: along * chord.y - direction.y };
}

function unit(x: number, y: number): Point {
  const length = Math.hypot(x, y) || 1;
  return { x: x / length, y: y / length };
}

function farthest(points: readonly Point[], directions: readonly Point[], from: number, options: BiarcOptions): number {
  let to = from + 1;
  while (to + 1 < points.length && reaches(points, directions, from, to + 1, options)) to++;
  return to;
}

function reaches(
  points: readonly Point[],
  directions: readonly Point[],
  from: number,
  to: number,
  { within, by }: BiarcOptions,
): boolean {
  const end = points[to]!;
  if (end.x === points[from]!.x && end.y === points[from]!.y) return false;
  const arcs = [...biarc(points[from]!, directions[from]!, end, directions[to]!, by), { ...end, bulge: 0, by }];
  return points.slice(from + 1, to).every((p) => nearestOnPath(arcs, p)!.distance <= within);
}
