import { fillet } from "../../geometry/corners.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { polygon } from "../../geometry/shapes.js";
import { type Sure, sureOffset } from "../../geometry/sure.js";
import { turned } from "../../geometry/transform.js";
import type { Job } from "../../model/job.js";
import { addedAt, type PlateCovering } from "./covering.js";
import type { NotchSpec } from "./schema.js";

/** How far beyond the plate an open notch is drawn, so that it cuts the edge away for certain, mm. */
const beyond = 10;

/**
 * What a notch takes out of the bare board: the obstacle, its clearance, and the covering on the notch's own edges.
 * `round` is the finished inside radius; as cut it is larger by the covering. Open to a side, the notch is square to
 * that side and runs out over it; else it is a hole round the obstacle.
 *
 * Returns: one region, or a doubt; undefined where the obstacle or the side is not known (the references say so) or nothing can be made of it.
 */
export function notchRegion(notch: NotchSpec, covering: PlateCovering | undefined, job: Job): Sure | undefined {
  const obstacle = job.space.obstacles[notch.around];
  if (obstacle === undefined) return undefined;
  const by = `notch.${notch.around}`;
  const added = addedAt(by, covering);
  const grow = obstacle.clear + added;
  const radius = notch.round === undefined ? added : notch.round + added;
  if (notch["open to"] === undefined) {
    const grown = sureOffset({ outer: renamed(obstacle.outline, by), holes: [] }, grow, { corners: "sharp" });
    if (grown.doubt) return grown;
    return {
      value: grown.value.map(({ outer }) => ({ outer: renamed(fillet(outer, radius).profile, by), holes: [] })),
    };
  }
  const out = outwardOf(notch["open to"], job.space.outline);
  if (out === undefined) return undefined;
  const outer = renamed(openNotch(obstacle.outline, job.space.outline, out, grow, radius, by), by);
  return { value: [{ outer, holes: [] }] };
}

/** An obstacle's plate-wise reach, turned so that the open side lies to the right, drawn as a rectangle, turned back. */
function openNotch(
  obstacle: Profile,
  outline: Profile,
  out: number,
  grow: number,
  radius: number,
  by: string,
): Profile {
  const seen = extentsOf(turned(obstacle, -out));
  const edge = extentsOf(turned(outline, -out)).max.x + beyond;
  const x0 = seen.min.x - grow;
  const y0 = seen.min.y - grow;
  const y1 = seen.max.y + grow;
  const corners: readonly Point[] = [
    { x: x0, y: y0 },
    { x: edge, y: y0 },
    { x: edge, y: y1 },
    { x: x0, y: y1 },
  ];
  const rounded = fillet(polygon(corners, by), (index: number) => (index === 0 || index === 3 ? radius : 0));
  return turned(rounded.profile, out);
}

/** The direction square to a side, out of the space, rad from x; by the chord of the side's own edge. */
function outwardOf(side: string, outline: Profile): number | undefined {
  const index = outline.findIndex((vertex) => vertex.by === side);
  const from = outline[index];
  const to = outline[(index + 1) % outline.length];
  if (from === undefined || to === undefined) return undefined;
  return Math.atan2(to.y - from.y, to.x - from.x) - Math.PI / 2;
}

/** Every edge of a notch is the notch's. */
function renamed(profile: Profile, by: string): Profile {
  return profile.map((vertex) => ({ ...vertex, by }));
}
