import { extentsOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { samePoint, tolerance } from "../../../geometry/tolerance.js";
import { downToStep } from "../../common/method.js";
import { atOrigin, type Extrusion, endNames, wallNames } from "./extrusion.js";
import type { Sheet } from "./face.js";
import { type Meeting, meetingOf } from "./meeting.js";
import { sheetAt } from "./wallSheet.js";
import { coversAt, lengthRun, type Run, type Skins, type WallLines, wallLinesOf, wallRuns } from "./walls.js";

/** Rounds of setting the lengths: one will do where all is square; a leaning wall moves its neighbours' ends a little. */
const rounds = 8;

/**
 * The outside whose sawn panels are whole steps of the saw, as one set.
 *
 * 1. Along the extrusion the walls that give up most to the ends are set first, since walls of one height come from one
 *    fence setting; the outside follows from them and the measured thickness.
 * 2. In the section each level or upright wall holds the places of its two ends a whole number of steps apart, walls
 *    that stand between others first: those that cover can stand proud instead. A wall that leans follows its ends.
 */
export function snapped(extrusion: Extrusion, skins: Skins, meetings: readonly Meeting[], step: number): Extrusion {
  const length = snappedLength(extrusion, skins, meetings, step);
  let section = extrusion.section;
  for (let round = 0; round < rounds; round++) {
    const before = section;
    section = settle(before, extrusion, skins, meetings, step);
    if (section.every((corner, i) => samePoint(corner, before[i]!))) break;
  }
  return { ...extrusion, section: atOrigin(section), length };
}

/** What is cut of a run: the longer of face and back, mm. */
export const spanOf = ({ face, back }: Run): number => Math.max(face[1], back[1]) - Math.min(face[0], back[0]);

const whole = (size: number, step: number) => Math.round(size / step) * step;

function snappedLength(extrusion: Extrusion, skins: Skins, meetings: readonly Meeting[], step: number): number {
  const most = Math.max(
    ...wallNames(extrusion).map((wall) => extrusion.length - spanOf(lengthRun(wall, extrusion, skins, meetings))),
  );
  return whole(extrusion.length - most, step) + most;
}

/** Two corners that a board holds a length apart along an axis: how far that is off a whole step, and at how many ends it covers. */
type Held = {
  readonly axis: Axis;
  readonly from: number;
  readonly to: number;
  readonly off: number;
  readonly covers: number;
};
type Axis = "x" | "y";
const axes = ["x", "y"] as const;

/** One round: every board along an axis, those between others first, moves what hangs on its far end by what it is off. */
function settle(
  section: Profile,
  extrusion: Extrusion,
  skins: Skins,
  meetings: readonly Meeting[],
  step: number,
): Profile {
  const lines = wallLinesOf({ ...extrusion, section }, skins);
  const held = [
    ...heldByWalls(section, wallRuns(lines, meetings), meetings, step),
    ...endNames[extrusion.view].flatMap((end) => heldByEnd(end, section, lines, meetings, step)),
  ].sort((a, b) => a.covers - b.covers);
  return axes.reduce((moved, axis) => moveAlong(moved, axis, held), section);
}

/** The axis that a wall runs along; none where it leans. */
function axisOf(section: Profile, i: number): Axis | undefined {
  const [a, b] = [section[i]!, section[(i + 1) % section.length]!];
  return same(a.y, b.y) ? "x" : same(a.x, b.x) ? "y" : undefined;
}

const same = (a: number, b: number) => Math.abs(a - b) <= tolerance.samePoint;

function heldByWalls(
  section: Profile,
  runs: readonly Run[],
  meetings: readonly Meeting[],
  step: number,
): readonly Held[] {
  const n = section.length;
  return section.flatMap((corner, i): Held[] => {
    const axis = axisOf(section, i);
    if (axis === undefined) return [];
    const [to, size] = [(i + 1) % n, spanOf(runs[i]!)];
    const covers = [section[(i + n - 1) % n]!, section[to]!].filter(({ by }) => coversAt(corner.by, by, meetings));
    return [{ axis, from: i, to, off: whole(size, step) - size, covers: covers.length }];
  });
}

/** An end holds apart the two walls that bound it along an axis, where they stand square to it. */
function heldByEnd(
  end: string,
  section: Profile,
  lines: readonly WallLines[],
  meetings: readonly Meeting[],
  step: number,
): readonly Held[] {
  const { min, max } = extentsOf(section);
  return axes.flatMap((axis): Held[] => {
    const bound = (at: number) =>
      section.findIndex((corner, i) => same(corner[axis], at) && axisOf(section, i) === across(axis));
    const [from, to] = [bound(min[axis]), bound(max[axis])];
    if (from < 0 || to < 0) return [];
    const over = [from, to].map((i) => coversAt(end, section[i]!.by, meetings));
    const [low, high] = [from, to].map((i, k) => (over[k] ? lines[i]!.outer : lines[i]!.back).at[axis]) as [
      number,
      number,
    ];
    const deep = [from, to].reduce((sum, i) => sum + meetingOf(meetings, end, section[i]!.by).deep, 0);
    const letIn = over.some(Boolean) ? 0 : deep;
    const size = high - low + letIn;
    return [{ axis, from, to, off: whole(size, step) - size, covers: over.filter(Boolean).length }];
  });
}

const across = (axis: Axis): Axis => (axis === "x" ? "y" : "x");

/** Places with one coordinate in common move together; two sets that a wall holds apart become one. */
function moveAlong(section: Profile, axis: Axis, held: readonly Held[]): Profile {
  const n = section.length;
  const sets = new Map<number, number[]>();
  const setOf = section.map((_, i) => i);
  section.forEach((_, i) => void sets.set(i, [i]));
  const shift = section.map(() => 0);
  const join = (a: number, b: number) => {
    const [one, two] = [setOf[a]!, setOf[b]!];
    if (one === two) return;
    const moved = sets.get(two)!;
    for (const i of moved) setOf[i] = one;
    sets.get(one)!.push(...moved);
    sets.delete(two);
  };
  for (let i = 0; i < n; i++) if (axisOf(section, i) === across(axis)) join(i, (i + 1) % n);
  for (const { from: i, to: j, off } of held.filter((board) => board.axis === axis)) {
    if (setOf[i] === setOf[j]) continue;
    const way = Math.sign(section[j]![axis] - section[i]![axis]);
    // the length grows by what the far end moves more than the near one has
    const by = shift[i]! - shift[j]! + way * off;
    for (const k of sets.get(setOf[j]!)!) shift[k] = shift[k]! + by;
    join(i, j);
  }
  return section.map((corner, i) => ({ ...corner, [axis]: corner[axis] + shift[i]! }));
}

/**
 * A run taken up to whole steps where it covers a neighbour: it stands proud there by less than a step and is sanded
 * off. What stands between others stays as it is.
 */
export function proud(run: Run, covers: readonly [boolean, boolean], step: number | undefined): Run {
  if (step === undefined || (!covers[0] && !covers[1])) return run;
  const size = spanOf(run);
  const more = Math.ceil(size / step - 1e-6) * step - size;
  const [start, end] = covers[1] ? [0, more] : [-more, 0];
  const moved = ([a, b]: readonly [number, number]) => [a + start, b + end] as const;
  return { face: moved(run.face), back: moved(run.back) };
}

/**
 * A run cut down to whole steps where it is let into its neighbour: its end then stands off the floor of the rebate or
 * groove by less than a step, and the joint is closed by its sides. What is not let in so far stays as it is.
 */
export function eased(run: Run, letIn: readonly [number, number], step: number | undefined): Run {
  if (step === undefined) return run;
  const size = spanOf(run);
  const less = size - downToStep(size, step);
  const [start, end] = letIn.map((deep) => deep > 2 * step) as [boolean, boolean];
  if (less < tolerance.samePoint || (!start && !end)) return run;
  const moved = ([a, b]: readonly [number, number]) =>
    (end ? [a, b - less] : [a + less, b]) as readonly [number, number];
  return { face: moved(run.face), back: moved(run.back) };
}

/** The same for an end's sheet: an upright or level edge that covers its wall is moved out until the sheet is whole steps. */
export function proudEnd(sheet: Sheet, covers: (wall: string) => boolean, step: number | undefined): Sheet {
  if (step === undefined) return sheet;
  const { min, max } = extentsOf(sheet.outline);
  const grown = axes.reduce((outline, axis) => {
    const size = max[axis] - min[axis];
    const more = Math.ceil(size / step - 1e-6) * step - size;
    const edge = (at: number) =>
      outline.findIndex(
        (corner, i) => same(corner[axis], at) && axisOf(outline, i) === across(axis) && covers(corner.by),
      );
    const [low, high] = [edge(min[axis]), edge(max[axis])];
    if (more < tolerance.samePoint || (low < 0 && high < 0)) return outline;
    return high >= 0 ? moveEdge(outline, high, axis, more) : moveEdge(outline, low, axis, -more);
  }, sheet.outline);
  return sheetAt(sheet.frame, grown, sheet.bevels, 0, sheet.thickness);
}

/** An edge moved along an axis; its neighbours go on to it in their own lines. */
function moveEdge(outline: Profile, i: number, axis: Axis, by: number): Profile {
  const n = outline.length;
  const j = (i + 1) % n;
  const slide = (corner: Profile[number], other: Profile[number]) => {
    const share = by / (corner[axis] - other[axis]);
    return {
      ...corner,
      x: corner.x + (corner.x - other.x) * share,
      y: corner.y + (corner.y - other.y) * share,
    };
  };
  return outline.map((corner, k) => {
    if (k === i) return slide(corner, outline[(i + n - 1) % n]!);
    return k === j ? slide(corner, outline[(j + 1) % n]!) : corner;
  });
}
