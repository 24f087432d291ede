import { arcOf } from "../../../geometry/arc.js";
import { place, turn } from "../../../geometry/frame.js";
import { eachEdge } from "../../../geometry/measure.js";
import type { Point } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import type { FeatureId } from "../../../model/ids.js";
import type { Job, Obstacle } from "../../../model/job.js";
import { finishedRegion, makersOf } from "../../solids.js";
import type { Standing } from "../../standing.js";
import { cornersOfOutline } from "./corners.js";

/** An inside corner of a part that comes nearer to a sharp corner of an obstacle than its clearance. mm. */
export type TightCorner = {
  readonly obstacle: string;
  readonly clear: number;
  /** Of the corner with its covering on. */
  readonly radius: number;
  readonly reached: number;
  readonly features: readonly FeatureId[];
};

/** The worst such corner for each obstacle that a level part is rounded about. */
export function tightCorners(job: Job, standing: Standing): readonly TightCorner[] {
  if (Math.abs(turn(standing.at.quat, [0, 0, 1])[2]) < 1 - 1e-9) return [];
  const arcs = insideArcs(standing);
  return Object.entries(job.space.obstacles).flatMap(([name, obstacle]) => {
    if (!levelWith(standing, obstacle)) return [];
    const found = cornersOfOutline(obstacle.outline).flatMap((corner) =>
      arcs.flatMap((arc) => (isBehind(arc, corner) ? [{ arc, reached: arc.radius - away(arc, corner) }] : [])),
    );
    const worst = found.sort((a, b) => a.reached - b.reached)[0];
    if (worst === undefined || worst.reached >= obstacle.clear - tolerance.contact) return [];
    const { radius, features } = worst.arc;
    return [{ obstacle: name, clear: obstacle.clear, radius, reached: worst.reached, features }];
  });
}

/** An arc that bows into the board, with its covering on, seen from above in the vehicle. */
type InsideArc = {
  readonly center: Point;
  readonly radius: number;
  readonly ends: readonly [Point, Point];
  readonly features: readonly FeatureId[];
};

function insideArcs({ part, at }: Standing): readonly InsideArc[] {
  const { outer, holes } = finishedRegion(part);
  const seen = ({ x, y }: Point): Point => {
    const [vx, vy] = place(at, [x, y, 0]);
    return { x: vx, y: vy };
  };
  const arcs: InsideArc[] = [];
  [outer, ...holes].forEach((loop, i) => {
    eachEdge(loop, (a, b) => {
      // Holes run counter-clockwise too, so there the arcs that turn left bow into the board.
      if (i === 0 ? a.bulge >= 0 : a.bulge <= 0) return;
      const { center, radius } = arcOf(a, b);
      const features = makersOf(part, [a]).map(({ id }) => id);
      arcs.push({ center: seen(center), radius, ends: [seen(a), seen(b)], features });
    });
  });
  return arcs;
}

/** Whether a point lies in the corner that the arc cuts off: in the wedge from its centre through its ends. */
function isBehind({ center, ends, radius }: InsideArc, p: Point): boolean {
  const [u, v] = [from(center, ends[0]), from(center, ends[1])];
  const w = from(center, p);
  const turnOf = (a: Point, b: Point) => a.x * b.y - a.y * b.x;
  const side = Math.sign(turnOf(u, v));
  return turnOf(u, w) * side > 0 && turnOf(w, v) * side > 0 && Math.hypot(w.x, w.y) < 2 * radius;
}

function away({ center }: InsideArc, p: Point): number {
  const { x, y } = from(center, p);
  return Math.hypot(x, y);
}

function from(a: Point, b: Point): Point {
  return { x: b.x - a.x, y: b.y - a.y };
}

function levelWith({ part, at, block }: Standing, { bottom, top, clear }: Obstacle): boolean {
  const heights = [block.min[2], block.max[2]].map((z) => place(at, [0, 0, z])[2]);
  return part.thickness > 0 && Math.min(...heights) < top + clear && Math.max(...heights) > bottom - clear;
}
