import { inverse, place } from "../../../geometry/frame.js";
import type { Point } from "../../../geometry/profile.js";
import type { Origin } from "../../../input/finding.js";
import type { Draft } from "../../common/part.js";
import { faceOf } from "../form/box.js";
import type { Face } from "../form/face.js";
import { inward, lineThrough } from "../form/lines.js";
import type { Shape } from "../shape.js";
import { edgeNamed } from "./jointScrews.js";

/**
 * The rebates and grooves on the back of a panel that its neighbours are let into: as wide as those are thick, a rebate
 * from the edge, a groove as far in as the neighbour is set in. Measured on the panels themselves, so that what stands
 * proud to be sanded off is counted.
 */
export function letInDrafts(face: Face, shape: Shape, from: readonly Origin[]): readonly Draft[] {
  return shape.meetings.flatMap((meeting): Draft[] => {
    if (meeting.over !== face.name || meeting.deep === 0) return [];
    const into = faceOf(shape, meeting.into)!;
    const edge = edgeNamed(face.panel.outline, into.name);
    if (edge === undefined) return [];
    const [near, far] = bandOf(edge, face, into);
    const cut: Draft["cut"] =
      meeting.form === "rebate"
        ? { kind: "edge", form: "rebate", along: [into.name], width: far, depth: meeting.deep, angle: 0 }
        : {
            kind: "groove",
            path: middleOf(edge, (near + far) / 2, into.name),
            closed: false,
            width: far - near,
            depth: meeting.deep,
          };
    return [{ name: `${meeting.form}.${into.name}`, from, side: "back", cut }];
  });
}

/** How far in from the edge the other panel's face and back lie, mm. */
function bandOf([a, b]: readonly [Point, Point], face: Face, into: Face): readonly [number, number] {
  const line = lineThrough(a, b);
  const seen = inverse(face.panel.frame);
  const depths = [0, -into.panel.thickness].map((z) => {
    const [x, y] = place(seen, place(into.panel.frame, [0, 0, z]));
    return (y - line.at.y) * line.along.x - (x - line.at.x) * line.along.y;
  });
  return [Math.min(...depths), Math.max(...depths)];
}

function middleOf([a, b]: readonly [Point, Point], distance: number, by: string) {
  const { at, along } = inward(lineThrough(a, b), distance);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return [
    { ...at, bulge: 0, by },
    { x: at.x + along.x * length, y: at.y + along.y * length, bulge: 0, by },
  ];
}
