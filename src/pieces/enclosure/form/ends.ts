import { compose, type Frame, frameFromAxes, type Vector } from "../../../geometry/frame.js";
import { extentsOf } from "../../../geometry/measure.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { againstTheClock } from "../../../geometry/shapes.js";
import { type Extrusion, sectionFrames } from "./extrusion.js";
import { backOf, type Sheet } from "./face.js";
import { crossing, inward, type Line } from "./lines.js";
import { type Meeting, meetingOf } from "./meeting.js";
import { bevelOf, sheetAt } from "./wallSheet.js";
import type { Skins, WallLines } from "./walls.js";

/** How the axes of an end lie: seen from outside, as one stands before it. */
export type EndAxes = { readonly frame: Frame; readonly onFace: (section: Profile) => Profile };

/** The end where the extrusion begins is seen from the other side: from the left, or from below. */
export function endAxes({ view, section, length }: Extrusion, end: "low" | "high"): EndAxes {
  const { max } = extentsOf(section);
  const inBox = sectionFrames[view];
  if (end === "high") {
    return { frame: compose(inBox, frameFromAxes([0, 0, length], [1, 0, 0], [0, 1, 0])), onFace: (profile) => profile };
  }
  const [origin, x, y]: readonly [Vector, Vector, Vector] =
    view === "side"
      ? [
          [max.x, 0, 0],
          [-1, 0, 0],
          [0, 1, 0],
        ]
      : [
          [0, max.y, 0],
          [1, 0, 0],
          [0, -1, 0],
        ];
  const mirrored = (p: Point): Point => (view === "side" ? { x: max.x - p.x, y: p.y } : { x: p.x, y: max.y - p.y });
  return {
    frame: compose(inBox, frameFromAxes(origin, x, y)),
    onFace: (profile) => againstTheClock(profile.map((vertex) => ({ ...vertex, ...mirrored(vertex) }))),
  };
}

/** An end's panel: out to the outline over the walls that it covers, on the back of those that it stands between. */
export function endSheet(
  end: string,
  axes: EndAxes,
  lines: readonly WallLines[],
  skins: Skins,
  meetings: readonly Meeting[],
): Sheet {
  const skin = skins(end);
  const { thickness } = skin.board;
  const edges = lines.map((wall): readonly [Line, number] => {
    const meeting = meetingOf(meetings, end, wall.name);
    if (meeting.form === "mitre") return [wall.outer, bevelOf(backOf(skins(wall.name)), thickness)];
    return [meeting.over === end ? wall.outer : inward(wall.back, -meeting.deep), 0];
  });
  const outline = sectionBetween(
    lines,
    edges.map(([line]) => line),
  );
  const bevels = Object.fromEntries(lines.map(({ name }, i) => [name, edges[i]![1]]));
  return sheetAt(axes.frame, axes.onFace(outline), bevels, skin.setIn, thickness);
}

/** The section that these lines close in, each edge named after its wall. */
export function sectionBetween(lines: readonly WallLines[], edges: readonly Line[]): Profile {
  const n = edges.length;
  return lines.map(({ name }, i) => ({ ...crossing(edges[(i + n - 1) % n]!, edges[i]!), bulge: 0, by: name }));
}
