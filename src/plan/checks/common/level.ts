import { distanceBetween, nearestOn } from "../../../geometry/distance.js";
import { compose, type Frame, inverse, place, turn } from "../../../geometry/frame.js";
import { pointInProfile } from "../../../geometry/inside.js";
import { extentsOf } from "../../../geometry/measure.js";
import type { Point, Profile, Region } from "../../../geometry/profile.js";
import { againstTheClock, rectangle } from "../../../geometry/shapes.js";
import { tolerance } from "../../../geometry/tolerance.js";
import type { Body } from "../../solids.js";
import type { Standing } from "../../standing.js";

// What can be told in the plane, exactly and without solids: most parts lie flat on each other or stand square.

/** Two planes that lean less than this to each other are one, rad: 0.001 mm in a metre. */
const level = tolerance.smooth;

/** A region of the frame `from`, seen square on in the frame `to`; none where their planes lean. */
export function seenLevel(region: Region, from: Frame, to: Frame): Region | undefined {
  const seen = compose(inverse(to), from);
  const out = turn(seen.quat, [0, 0, 1]);
  if (Math.hypot(out[0], out[1]) > level) return undefined;
  const mirrored = out[2] < 0;
  const moved = (loop: Profile): Profile => {
    const points = loop.map((vertex) => {
      const [x, y] = place(seen, [vertex.x, vertex.y, 0]);
      return { ...vertex, x, y, bulge: mirrored ? -vertex.bulge : vertex.bulge };
    });
    return mirrored ? againstTheClock(points) : points;
  };
  return { outer: moved(region.outer), holes: region.holes.map(moved) };
}

/** Two parts whose outlines, seen square on, stand clear of each other; one may lie in a hole of the other. */
export function clearInPlan(one: Standing, other: Standing): boolean {
  const seen = seenLevel(other.part.profile, other.at, one.at);
  return seen !== undefined && distanceBetween(one.part.profile, seen) > 0;
}

/** Whether a region lies wholly inside an outline, not even touching it. */
export function insideOutline(region: Region, outline: Profile): boolean {
  const { min, max } = extentsOf(outline);
  const own = extentsOf(region);
  const [x0, y0] = [Math.min(min.x, own.min.x) - 1, Math.min(min.y, own.min.y) - 1];
  const [x1, y1] = [Math.max(max.x, own.max.x) + 1, Math.max(max.y, own.max.y) + 1];
  return distanceBetween(region, { outer: rectangle(x0, y0, x1, y1, ""), holes: [outline] }) > 0;
}

/** A round body that goes through the part where nothing is: in an opening, or in a pocket above its floor. */
export function passesFreely({ part, at }: Standing, body: Body, mount: Frame): boolean {
  const seen = compose(inverse(at), mount);
  const out = turn(seen.quat, [0, 0, 1]);
  if (Math.hypot(out[0], out[1]) > level) return false;
  const heights = [body.from, body.to].map((z) => place(seen, [0, 0, z])[2]);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const radius = Math.max(body.d, body.dTo) / 2;
  const centre = { x: seen.origin[0], y: seen.origin[1] };
  return (
    part.profile.holes.some((hole) => holdsDisc(hole, centre, radius)) ||
    part.features.some(({ cut, side }) => {
      if (cut.kind !== "pocket" || !holdsDisc(cut.region.outer, centre, radius)) return false;
      if (side === "face") return low >= -cut.depth - tolerance.contact;
      return side === "back" && high <= cut.depth - part.thickness + tolerance.contact;
    })
  );
}

function holdsDisc(loop: Profile, centre: Point, radius: number): boolean {
  const room = nearestOn(loop, centre)?.distance ?? 0;
  return pointInProfile(loop, centre) && room >= radius - tolerance.contact;
}
