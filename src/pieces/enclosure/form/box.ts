import { compose, type Frame, frameFromAxes } from "../../../geometry/frame.js";
import type { Profile } from "../../../geometry/profile.js";
import type { Inside } from "../inside.js";
import { type EndAxes, endAxes, endSheet, sectionBetween } from "./ends.js";
import { type Extrusion, endNames, sectionFrames } from "./extrusion.js";
import { backOf, depthOf, type Face, type Sheet } from "./face.js";
import { type Meeting, meetingOf } from "./meeting.js";
import { eased, proud, proudEnd, snapped } from "./snap.js";
import { type Bounds, boundsOf, sheetAt, wallAxes, wallSheet } from "./wallSheet.js";
import {
  coversAt,
  lengthRun,
  liningRuns,
  type Run,
  type Skins,
  type WallLines,
  wallLinesOf,
  wallRuns,
} from "./walls.js";

/** A box as far as its boards go: every face with its panel, who meets whom, and the air inside. Box frame, mm. */
export type Boards = {
  readonly extrusion: Extrusion;
  readonly laps: readonly string[];
  readonly meetings: readonly Meeting[];
  readonly faces: readonly Face[];
  readonly inside: Inside;
};

/** What a box is asked to be: `step` is what its sawn sizes keep to, mm. */
export type Asked = {
  readonly extrusion: Extrusion;
  readonly skins: Skins;
  readonly laps: readonly string[];
  readonly meetings: readonly Meeting[];
  readonly step: number | undefined;
};

export function boardsOf(asked: Asked): Boards {
  const { skins, laps, meetings, step } = asked;
  const extrusion = step === undefined ? asked.extrusion : snapped(asked.extrusion, skins, meetings, step);
  const lines = wallLinesOf(extrusion, skins);
  const inside = insideOf(extrusion, skins, lines);
  return {
    extrusion,
    laps,
    meetings,
    inside,
    faces: [...wallFaces({ ...asked, extrusion }, lines), ...endFaces({ ...asked, extrusion }, lines, inside)],
  };
}

function insideOf(extrusion: Extrusion, skins: Skins, lines: readonly WallLines[]): Inside {
  const [low, high] = endNames[extrusion.view];
  return {
    section: sectionBetween(
      lines,
      lines.map(({ air }) => air),
    ),
    from: depthOf(skins(low)),
    to: extrusion.length - depthOf(skins(high)),
    ends: [low, high],
    frame: sectionFrames[extrusion.view],
  };
}

function wallFaces({ extrusion, skins, laps, meetings, step }: Asked, lines: readonly WallLines[]): Face[] {
  const runs = wallRuns(lines, meetings);
  const linings = liningRuns(lines, meetings, laps);
  return lines.map((wall, i): Face => {
    const skin = skins(wall.name);
    const axes = wallAxes(extrusion, i);
    const bounds = boundsOf(extrusion, i);
    const covers = (a: string, b: string) =>
      [coversAt(wall.name, a, meetings), coversAt(wall.name, b, meetings)] as const;
    const sawn = skin.method === "cnc" ? undefined : step;
    const deep = (other: string) => letInAt(meetings, wall.name, other);
    const cut = (run: Run, one: string, other: string) =>
      eased(proud(run, covers(one, other), sawn), [deep(one), deep(other)], sawn);
    const along = cut(runs[i]!, bounds.before, bounds.after);
    const up = cut(lengthRun(wall.name, extrusion, skins, meetings), bounds.low, bounds.high);
    const { thickness } = skin.board;
    return {
      name: wall.name,
      skin,
      frame: compose(axes.frame, behind(skin.setIn)),
      outline: wallOutline(axes, bounds, extrusion, i),
      panel: wallSheet(axes, bounds, along, up, skin.setIn, thickness),
      lining:
        skin.lining === 0
          ? undefined
          : wallSheet(axes, bounds, linings[i]!, between(extrusion, skins), backOf(skin), skin.lining),
    };
  });
}

const behind = (deep: number): Frame => frameFromAxes([0, 0, -deep], [1, 0, 0], [0, 1, 0]);

/** From the back of one end's panel to that of the other: as far as a wall's lining runs. */
function between(extrusion: Extrusion, skins: Skins): Run {
  const [low, high] = endNames[extrusion.view].map((end) => backOf(skins(end))) as [number, number];
  const run = [low, extrusion.length - high] as const;
  return { face: run, back: run };
}

function wallOutline(axes: ReturnType<typeof wallAxes>, bounds: Bounds, extrusion: Extrusion, i: number): Profile {
  const [a, b] = [extrusion.section[i]!, extrusion.section[(i + 1) % extrusion.section.length]!];
  const along = [0, Math.hypot(b.x - a.x, b.y - a.y)] as const;
  const up = [0, extrusion.length] as const;
  return wallSheet(axes, bounds, { face: along, back: along }, { face: up, back: up }, 0, 0).outline;
}

function endFaces({ extrusion, skins, meetings, step }: Asked, lines: readonly WallLines[], inside: Inside): Face[] {
  return endNames[extrusion.view].map((end, i): Face => {
    const skin = skins(end);
    const axes = endAxes(extrusion, i === 0 ? "low" : "high");
    const panel = endSheet(end, axes, lines, skins, meetings);
    const sawn = skin.method === "cnc" ? undefined : step;
    const covered = (wall: string) => coversAt(end, wall, meetings);
    return {
      name: end,
      skin,
      frame: compose(axes.frame, behind(skin.setIn)),
      outline: axes.onFace(extrusion.section),
      panel: proudEnd(panel, covered, sawn),
      lining: skin.lining === 0 ? undefined : flat(axes, inside.section, backOf(skin), skin.lining),
    };
  });
}

function flat(axes: EndAxes, section: Profile, deep: number, thickness: number): Sheet {
  return sheetAt(axes.frame, axes.onFace(section), {}, deep, thickness);
}

export const faceOf = ({ faces }: Pick<Boards, "faces">, name: string): Face | undefined =>
  faces.find((face) => face.name === name);

/** How deep a panel is let into the one that covers this edge of it, mm. */
function letInAt(meetings: readonly Meeting[], face: string, other: string): number {
  const { into, deep } = meetingOf(meetings, face, other);
  return into === face ? deep : 0;
}
