import { inverse, place } from "../../../geometry/frame.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import type { Origin } from "../../../input/finding.js";
import type { Draft } from "../../common/part.js";
import { faceOf } from "../form/box.js";
import type { Face } from "../form/face.js";
import { inward, lineThrough } from "../form/lines.js";
import type { Meeting } from "../form/meeting.js";
import type { Shape } from "../shape.js";
import { edgeNamed } from "./jointScrews.js";

/**
 * The rebates and grooves on the back of a panel that its neighbours are let into: as wide as those are thick, a rebate
 * from the edge, a groove as far in as the neighbour is set in. Measured on the panels themselves, so that what stands
 * proud to be sanded off is counted. Rebates of one width and depth are one feature: the bit goes round their corners,
 * and along the rounded ones of the `outline` as it is cut.
 */
export function letInDrafts(face: Face, shape: Shape, outline: Profile, from: readonly Origin[]): readonly Draft[] {
  const bands = shape.meetings.flatMap((meeting) => {
    const edge = edgeNamed(face.panel.outline, meeting.into);
    if (meeting.over !== face.name || meeting.deep <= 0 || edge === undefined) return [];
    const [near, far] = bandOf(edge, face, faceOf(shape, meeting.into)!);
    return [{ meeting, edge, near, far }];
  });
  const grooves = bands
    .filter(({ meeting }) => meeting.form === "groove")
    .map(({ meeting: { into, deep }, edge, near, far }): Draft => {
      const path = middleOf(edge, (near + far) / 2, into);
      const cut = { kind: "groove", path, closed: false, width: far - near, depth: deep } as const;
      return { name: `groove.${into}`, from, side: "back", cut };
    });
  const rebates = alike(bands.filter(({ meeting }) => meeting.form === "rebate")).map((group): Draft => {
    const names = group.map(({ meeting }) => meeting.into);
    const corners = outline
      .map(({ by }) => by)
      .filter((by) => by.includes("|") && by.split("|").every((one) => names.includes(one)));
    const { far, meeting } = group[0]!;
    const along = [...names, ...new Set(corners)];
    const cut = { kind: "edge", form: "rebate", along, width: far, depth: meeting.deep, angle: 0 } as const;
    return { name: `rebate.${names[0]}`, from, side: "back", cut };
  });
  return [...grooves, ...rebates];
}

type Band = { readonly meeting: Meeting; readonly far: number };

/** Bands of one width and depth together. */
function alike<T extends Band>(bands: readonly T[]): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const band of bands) {
    const same = groups.find(([first]) => {
      return Math.abs(first!.far - band.far) < tolerance.samePoint && first!.meeting.deep === band.meeting.deep;
    });
    if (same === undefined) groups.push([band]);
    else same.push(band);
  }
  return groups;
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
