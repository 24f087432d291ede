import { type Extrusion, endNames } from "./extrusion.js";
import { backOf, boardBackOf, depthOf, type Skin } from "./face.js";
import { alongTo, crossing, inward, type Line, lineThrough } from "./lines.js";
import { type Meeting, meetingOf } from "./meeting.js";

/** From where to where something runs, at its face and at its back, mm. */
export type Run = { readonly face: readonly [number, number]; readonly back: readonly [number, number] };

/** A wall as it lies in the section: the outline's line, its face, its board's back, where its neighbours end behind that
 *  (they differ by a gasket), and the line where the air begins. */
export type WallLines = {
  readonly name: string;
  readonly outer: Line;
  readonly face: Line;
  readonly boardBack: Line;
  readonly back: Line;
  readonly air: Line;
};

export type Skins = (face: string) => Skin;

export function wallLinesOf({ section }: Extrusion, skins: Skins): readonly WallLines[] {
  return section.map((corner, i) => {
    const outer = lineThrough(corner, section[(i + 1) % section.length]!);
    const skin = skins(corner.by);
    return {
      name: corner.by,
      outer,
      face: inward(outer, skin.setIn),
      boardBack: inward(outer, boardBackOf(skin)),
      back: inward(outer, backOf(skin)),
      air: inward(outer, depthOf(skin)),
    };
  });
}

/**
 * Where each wall's panel is cut off along its own edge of the section, mm from the corner at which that edge begins.
 *
 * At a corner that juts out the panel that runs over is cut off in the other's outline, so that the outside closes flush,
 * and the other on its back, or as deep behind that as it is let in. In a corner that goes in the panel that runs over
 * goes on to the other's back, and the other ends on its face. Of a mitre both are cut in the plane through the corner of
 * the faces and the corner of the backs.
 */
export function wallRuns(lines: readonly WallLines[], meetings: readonly Meeting[]): readonly Run[] {
  const n = lines.length;
  const corners = lines.map((two, k) => cornerCut(lines[(k + n - 1) % n]!, two, meetings));
  return lines.map((_, i) => {
    const [{ start }, { end }] = [corners[i]!, corners[(i + 1) % n]!];
    return { face: [start.face, end.face], back: [start.back, end.back] };
  });
}

/** Where one end of a panel is cut, at its face and at its back, mm along its wall's edge. */
type Cut = { readonly face: number; readonly back: number };

function cornerCut(one: WallLines, two: WallLines, meetings: readonly Meeting[]) {
  const meeting = meetingOf(meetings, one.name, two.name);
  if (meeting.form === "mitre") {
    const [face, back] = [crossing(one.face, two.face), crossing(one.back, two.back)];
    const cut = ({ outer }: WallLines): Cut => ({ face: alongTo(outer, face), back: alongTo(outer, back) });
    return { end: cut(one), start: cut(two) };
  }
  const [over, into] = meeting.over === one.name ? [one, two] : [two, one];
  const goesIn = meeting.turn < 0;
  const ofOver = cutBy(over, goesIn ? into.back : into.outer);
  const ofInto = cutBy(into, goesIn ? over.face : inward(over.back, -meeting.deep));
  const kept = meeting.form === "square" && !goesIn ? squared(ofOver, over === one) : ofOver;
  return over === one ? { end: kept, start: ofInto } : { end: ofInto, start: kept };
}

function cutBy({ outer, face, boardBack }: WallLines, plane: Line): Cut {
  return { face: alongTo(outer, crossing(face, plane)), back: alongTo(outer, crossing(boardBack, plane)) };
}

/** A square end that covers all that the flush one would. */
function squared({ face, back }: Cut, isEnd: boolean): Cut {
  const at = isEnd ? Math.max(face, back) : Math.min(face, back);
  return { face: at, back: at };
}

/** The same for the board behind a panel: it fits between its neighbours' backs, or their linings, whichever is there first. */
export function liningRuns(
  lines: readonly WallLines[],
  meetings: readonly Meeting[],
  laps: readonly string[],
): readonly Run[] {
  const n = lines.length;
  const cut = (wall: WallLines, other: WallLines): Cut => {
    const first = laps.indexOf(wall.name) < laps.indexOf(other.name);
    const goesIn = meetingOf(meetings, wall.name, other.name).turn < 0;
    const plane = first === goesIn ? other.air : other.back;
    return {
      face: alongTo(wall.outer, crossing(wall.back, plane)),
      back: alongTo(wall.outer, crossing(wall.air, plane)),
    };
  };
  return lines.map((wall, i) => {
    const [start, end] = [cut(wall, lines[(i + n - 1) % n]!), cut(wall, lines[(i + 1) % n]!)];
    return { face: [start.face, end.face], back: [start.back, end.back] };
  });
}

/** Where a wall's panel is cut off along the extrusion, mm. */
export function lengthRun(wall: string, extrusion: Extrusion, skins: Skins, meetings: readonly Meeting[]): Run {
  const [low, high] = endNames[extrusion.view].map((end) => {
    const meeting = meetingOf(meetings, end, wall);
    const skin = skins(end);
    if (meeting.form === "mitre") return { face: skin.setIn, back: backOf(skin) };
    const at = meeting.over === end ? backOf(skin) - meeting.deep : 0;
    return { face: at, back: at };
  }) as [Cut, Cut];
  const { length } = extrusion;
  return { face: [low.face, length - high.face], back: [low.back, length - high.back] };
}

/** How far a run may be lengthened at its ends without meeting anything: where it covers its neighbour outside. */
export function coversAt(wall: string, other: string, meetings: readonly Meeting[]): boolean {
  const { over, form, turn } = meetingOf(meetings, wall, other);
  return over === wall && form !== "mitre" && turn > 0;
}
