import { type PieceId, partId } from "../../../model/ids.js";
import type { Joint } from "../../../model/joint.js";
import type { Edge } from "../../../model/part.js";
import { rules } from "../../../shop/rules.js";
import { upToStep } from "../../common/method.js";
import type { Face } from "../form/face.js";
import { meetingOf } from "../form/meeting.js";
import type { Shape } from "../shape.js";
import { jointName } from "./jointName.js";
import type { JointScrew } from "./jointScrews.js";

/** A joint for each pair of faces that meet, with the screws that hold it until, and after, the glue sets. */
export function jointsOf(piece: PieceId, { meetings }: Shape, screws: readonly JointScrew[]): readonly Joint[] {
  return meetings
    .filter(({ bolted }) => !bolted)
    .map((meeting) => {
      const id = jointName(piece, meeting);
      return {
        id,
        form: meeting.form === "square" ? "butt" : meeting.form,
        laps: partId(piece, meeting.over),
        into: partId(piece, meeting.into),
        edges: [meeting.over],
        axes: screws.filter((screw) => screw.joint === id).map((screw) => screw.axis),
        glue: true,
      };
    });
}

/**
 * The edges of a face's panel: those that meet a neighbour are joints, bevelled edges say so, and where a face to be
 * flushed covers a neighbour with a square edge it is left oversize.
 */
export function edgesOf(
  piece: PieceId,
  { name, panel }: Face,
  { meetings, step }: Shape,
  flush: readonly string[],
): Readonly<Record<string, Edge>> {
  const left = upToStep(rules.flushAllowance.value, step);
  return Object.fromEntries(
    panel.outline.flatMap(({ by }): [string, Edge][] => {
      const meeting = meetingOf(meetings, name, by);
      const bevel = panel.bevels[by] ?? 0;
      const isJoint = !meeting.bolted && (meeting.into === name || meeting.form === "mitre");
      if (isJoint) return [[by, { bevel, flush: 0, finish: { kind: "joint", joint: jointName(piece, meeting) } }]];
      const flushed = flush.includes(name) && bevel === 0 && meeting.turn > 0;
      if (bevel === 0 && !flushed) return [];
      return [[by, { bevel, flush: flushed ? left : 0, finish: { kind: "bare" } }]];
    }),
  );
}
