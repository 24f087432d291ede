import { below, type Finding, mm, raise, text } from "../../../input/finding.js";
import { partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import type { Draft } from "../../common/part.js";
import { roundOverMeetsScrew, roundOverOpensJoint } from "../findings.js";
import { faceOf } from "../form/box.js";
import type { Face } from "../form/face.js";
import { isSquare, type Meeting } from "../form/meeting.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import type { JointScrew } from "./jointScrews.js";
import { passes } from "./screwed.js";

/** The outer corners that are rounded over: square ones, where one of the faces is meant. */
function roundedMeetings(spec: EnclosureSpec, { meetings }: Shape): readonly Meeting[] {
  const rounding = spec["round over"];
  if (rounding === undefined) return [];
  const meant = (name: string) => rounding.faces?.includes(name) ?? true;
  return meetings.filter(
    (meeting) =>
      isSquare(meeting) &&
      meeting.turn > 0 &&
      meeting.form !== "groove" &&
      (meant(meeting.over) || meant(meeting.into)),
  );
}

/** The edges of a panel that are rounded over once the box is together. */
export function roundOverDrafts(spec: EnclosureSpec, face: Face, shape: Shape, around: Around): readonly Draft[] {
  const along = roundedMeetings(spec, shape)
    .filter(({ over }) => over === face.name)
    .map(({ into }) => into);
  const radius = spec["round over"]?.radius;
  if (radius === undefined || along.length === 0) return [];
  return [
    {
      name: "round-over",
      from: [below(around.origin, "round over")],
      stage: "assembled",
      cut: { kind: "edge", form: "roundOver", along, width: radius, depth: radius, angle: 0 },
    },
  ];
}

/** A round-over must not cut into the joint's line below the covering panel, nor into the head of a screw. */
export function roundOverFindings(
  spec: EnclosureSpec,
  shape: Shape,
  screws: readonly JointScrew[],
  around: Around,
): readonly Finding[] {
  const radius = spec["round over"]?.radius ?? 0;
  const at = [below(around.origin, "round over", "radius")];
  return roundedMeetings(spec, shape).flatMap((meeting): readonly Finding[] => {
    const [over, into] = [faceOf(shape, meeting.over)!, faceOf(shape, meeting.into)!];
    const on = [partId(around.id, over.name)];
    const most = passes(meeting, over);
    const facts = { radius: mm(radius), corner: text(`${over.name} + ${into.name}`) };
    if (meeting.form !== "mitre" && radius > most) {
      return [raise(roundOverOpensJoint, { at, on, facts: { ...facts, most: mm(most) } })];
    }
    const screw = screws.find((each) => each.over === over && each.into === into);
    const free = into.panel.thickness / 2 - (screw?.choice.row.head.d ?? 0) / 2;
    if (screw === undefined || radius <= free) return [];
    return [raise(roundOverMeetsScrew, { at, on, facts: { ...facts, most: mm(Math.max(0, free)) } })];
  });
}
