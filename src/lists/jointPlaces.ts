import { compose, type Frame, inverse, place, turn, type Vector } from "../geometry/frame.js";
import type { Point } from "../geometry/profile.js";
import type { Build } from "../model/build.js";
import type { Joint } from "../model/joint.js";
import type { Part } from "../model/part.js";

/**
 * Where an edge of a part stands on the part that covers it: both its ends at the face, in the other part's frame seen
 * from the face (z = 0 is its face, below is negative), mm, and the angle between the two boards inside, rad: a quarter
 * turn in a square corner, three quarters in one that goes in.
 */
export type JointPlace = {
  readonly form: Joint["form"];
  readonly edge: string;
  readonly on: Part;
  readonly angle: number;
  readonly from: Vector;
  readonly to: Vector;
};

/** Every edge of the part that is joined to another. What lies flat on another is left out. */
export function jointPlaces(part: Part, { plan }: Build): readonly JointPlace[] {
  return plan.built.joints.flatMap((joint) => {
    const on = plan.built.parts.find(({ id }) => id === joint.laps);
    if (joint.into !== part.id || on === undefined) return [];
    return joint.edges.flatMap((edge): JointPlace[] => {
      const ends = edgeOf(part, edge);
      if (ends === undefined) return [];
      const seen = compose(inverse(on.at), part.at);
      const [from, to] = ends.map(({ x, y }) => place(seen, [x, y, 0])) as [Vector, Vector];
      return [{ form: joint.form, edge, on, angle: angleOf(seen, ends), from, to }];
    });
  });
}

function edgeOf({ profile }: Part, edge: string): readonly [Point, Point] | undefined {
  const i = profile.outer.findIndex(({ by }) => by === edge);
  return i < 0 ? undefined : [profile.outer[i]!, profile.outer[(i + 1) % profile.outer.length]!];
}

/** From the covering board's own way inwards to the other's, through the inside of the box. */
function angleOf(seen: Frame, [a, b]: readonly [Point, Point]): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const along = turn(seen.quat, [ux, uy, 0]);
  const inward = turn(seen.quat, [-uy, ux, 0]);
  // the covering board's edge runs the other way round, so that its inside lies to the right of this one
  const own = [along[1], -along[0]] as const;
  const angle = Math.atan2(-inward[2], inward[0] * own[0] + inward[1] * own[1]);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}
