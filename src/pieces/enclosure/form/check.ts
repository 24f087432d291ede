import { profileFaults } from "../../../geometry/faults.js";
import { place } from "../../../geometry/frame.js";
import { areaOf, extentsOf } from "../../../geometry/measure.js";
import type { Profile } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { all, below, count, type Finding, list, mm, radians, raise, text } from "../../../input/finding.js";
import type { Around } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import { chamberFindings } from "../chambers/check.js";
import * as say from "../findings.js";
import { terminalsOf } from "../mounting/terminal.js";
import { driversOf, type EnclosureSpec, sizeNames } from "../schema.js";
import { cornerNames } from "./asked.js";
import type { Asked, Boards } from "./box.js";
import { endNames, faceNamesOf, sectionFrames, turnAtCorner, wallNames } from "./extrusion.js";
import { depthOf } from "./face.js";
import type { Meeting } from "./meeting.js";
import { extrusionOf, sizesFor, wayOf } from "./profile.js";
import { workedOut } from "./workedOut.js";

/** What is wrong with the description itself, whatever the size. */
export function specFindings(spec: EnclosureSpec, _size: number, around: Around): readonly Finding[] {
  const wrong = [...sizeFindings(spec, around), ...wallFindings(spec, around)];
  return wrong.length > 0
    ? wrong
    : [
        ...nameFindings(spec, around),
        ...lapFindings(spec, around),
        ...lineUp(spec, around),
        ...chamberFindings(spec, around),
      ];
}

function sizeFindings(spec: EnclosureSpec, { origin, id }: Around): readonly Finding[] {
  const { outside } = spec;
  const given = (["side", "plan", ...sizeNames] as const).filter((key) => outside[key] !== undefined);
  const way = wayOf(spec);
  const needed = [...(way === "square" ? [] : [way]), ...sizesFor[way]];
  const same = given.length === needed.length && given.every((key) => needed.includes(key));
  if (!same) {
    const facts = { piece: text(id), given: all(given), needed: all(needed) };
    return [raise(say.outsideIncomplete, { at: [below(origin, "outside")], on: [id], facts })];
  }
  const free = sizeNames.filter((key) => typeof outside[key] === "string");
  if (free.length > 1) {
    return [raise(say.oneFreeSize, { at: [below(origin, "outside", free[1]!)], facts: { found: count(free.length) } })];
  }
  if (free.length === 0 || outside[free[0]!] === "largest" || spec.net !== undefined || spec.dividers !== undefined)
    return [];
  return [raise(say.freeNeedsNet, { at: [below(origin, "outside", free[0]!)], facts: { size: text(free[0]!) } })];
}

/** Curved walls, and walls called like an end. */
function wallFindings(spec: EnclosureSpec, { origin, id }: Around): readonly Finding[] {
  const way = wayOf(spec);
  if (way === "square") return [];
  const at = [below(origin, "outside", way)];
  const corners = spec.outside[way] ?? [];
  const curved = corners.find(({ bulge }) => bulge !== 0);
  if (curved !== undefined) {
    return [raise(say.wallCurved, { at, on: [id], facts: { side: text(curved.by), piece: text(id) } })];
  }
  const twice = corners.find(({ by }) => endNames[way].includes(by));
  return twice === undefined
    ? []
    : [raise(say.faceNamedTwice, { at, on: [id], facts: { piece: text(id), found: text(twice.by) } })];
}

type Path = readonly (string | number)[];

/** Every face that the job names must be there, and every corner. */
function nameFindings(spec: EnclosureSpec, { origin, id }: Around): readonly Finding[] {
  const faces = faceNamesOf(extrusionOf(spec, 0));
  const listed = (names: readonly string[] | undefined, ...path: Path) =>
    (names ?? []).map((found, i) => ({ found, path: [...path, i] }));
  const mentions: readonly { readonly found: string; readonly path: Path }[] = [
    ...listed(spec.laps, "laps"),
    ...listed(spec.flush, "flush"),
    ...listed(spec["round over"]?.faces, "round over", "faces"),
    ...listed(spec.covered?.faces, "covered", "faces"),
    ...Object.keys(spec.panels ?? {}).map((found) => ({ found, path: ["panels", found] })),
    ...(spec.driver ? [{ found: spec.driver.in, path: ["driver", "in"] }] : []),
    ...(spec.drivers ?? []).map(({ in: found }, i) => ({ found, path: ["drivers", i, "in"] })),
    ...(spec.hatch ? [{ found: spec.hatch.in, path: ["hatch", "in"] }] : []),
    ...terminalsOf(spec).map(({ spec: { in: found }, path }) => ({ found, path: [...path, "in"] })),
    ...(spec["slot ports"] ?? []).map(({ in: found }, i) => ({ found, path: ["slot ports", i, "in"] })),
    ...(spec["round ports"] ?? []).map(({ in: found }, i) => ({ found, path: ["round ports", i, "in"] })),
  ];
  const unknown = mentions.filter(({ found }) => !faces.includes(found));
  return [
    ...unknown.map(({ found, path }) => {
      const facts = { piece: text(id), found: text(found), faces: list(faces) };
      return raise(say.noSuchFace, { at: [below(origin, ...path)], on: [id], facts });
    }),
    ...cornerFindings(spec, { origin, id }),
  ];
}

function cornerFindings(spec: EnclosureSpec, { origin, id }: Pick<Around, "origin" | "id">): readonly Finding[] {
  const extrusion = extrusionOf(spec, 0);
  const walls = wallNames(extrusion);
  const meet = (a: string, b: string) => {
    const [i, j] = [walls.indexOf(a), walls.indexOf(b)];
    if (i < 0 || j < 0) return i !== j && [a, b].every((face) => faceNamesOf(extrusion).includes(face));
    return Math.abs(i - j) === 1 || Math.abs(i - j) === walls.length - 1;
  };
  return Object.keys(spec.joints?.at ?? {}).flatMap((found) => {
    const [a, b, ...more] = cornerNames(found);
    if (a !== undefined && b !== undefined && more.length === 0 && meet(a, b)) return [];
    const at = [below(origin, "joints", "at", found)];
    return [raise(say.noSuchCorner, { at, on: [id], facts: { piece: text(id), found: text(found) } })];
  });
}

function lapFindings(spec: EnclosureSpec, { origin }: Around): readonly Finding[] {
  const faces = faceNamesOf(extrusionOf(spec, 0));
  const missing = faces.filter((face) => spec.laps && !spec.laps.includes(face));
  return missing.length === 0
    ? []
    : [raise(say.lapsTwice, { at: [below(origin, "laps")], facts: { missing: all(missing) } })];
}

function lineUp(spec: EnclosureSpec, { origin }: Around): readonly Finding[] {
  if (!spec.stands?.["line up"] || driversOf(spec).length > 0) return [];
  return [raise(say.lineUpNeedsDriver, { at: [below(origin, "stands", "line up")] })];
}

/** What is wrong with the corners that the job asks for. */
export function formFindings(spec: EnclosureSpec, size: number, around: Around): readonly Finding[] {
  const { asked } = workedOut(spec, size, around);
  const at = [below(around.origin, spec.joints ? "joints" : "outside")];
  const about = (def: (typeof say.enclosureFindings)[number], meeting: Meeting, facts: Finding["facts"] = {}) =>
    raise(def, { at, on: [around.id], facts: { corner: text(cornerOf(meeting)), ...facts } });
  return asked.meetings.flatMap((meeting): readonly Finding[] => {
    const { over, into, form, deep, letsIn } = meeting;
    const letIn = form === "rebate" || form === "groove";
    if (letIn && !letsIn) return [about(say.letInNotSquare, meeting, { form: text(form) })];
    const face =
      asked.skins(over).setIn > 0 ? over : form === "mitre" && asked.skins(into).setIn > 0 ? into : undefined;
    if (face !== undefined) {
      const other = face === over ? into : over;
      return [raise(say.setInCovers, { at, on: [around.id], facts: { face: text(face), other: text(other) } })];
    }
    if (form === "groove" && asked.skins(into).setIn === 0)
      return [about(say.grooveNotSetIn, meeting, { face: text(into) })];
    const most = asked.skins(over).board.thickness - rules.tipFloor.value;
    if (!letIn || deep <= most) return mitredEnd(meeting, asked, at, around);
    return [about(say.letInTooDeep, meeting, { form: text(form), deep: mm(deep), face: text(over), most: mm(most) })];
  });
}

/** An end that is mitred all round must have no corner that goes in. */
function mitredEnd(meeting: Meeting, { extrusion }: Asked, at: Finding["at"], { id }: Around): readonly Finding[] {
  const end = endNames[extrusion.view].find((name) => name === meeting.over || name === meeting.into);
  if (meeting.form !== "mitre" || end === undefined) return [];
  const walls = wallNames(extrusion);
  const wall = end === meeting.over ? meeting.into : meeting.over;
  const i = walls.indexOf(wall);
  const before = walls[(i + walls.length - 1) % walls.length]!;
  if (turnAtCorner(extrusion.section, i) > 0) return [];
  return [raise(say.mitreGoesIn, { at, on: [id], facts: { end: text(end), faces: all([before, wall]) } })];
}

const cornerOf = ({ over, into }: Meeting) => `${over} + ${into}`;

/** What is wrong with the boards that the description comes to. */
export function boardFindings(spec: EnclosureSpec, size: number, around: Around): readonly Finding[] {
  const { asked, boards } = workedOut(spec, size, around);
  const tight =
    wayOf(spec) === "square" ? tightSquare(boards, asked, around) : tightLength(spec, boards, asked, around);
  if (tight.length > 0) return tight;
  const gone = swallowed(spec, boards, around);
  return gone.length > 0 ? gone : steep(spec, boards, around);
}

function tightSquare({ extrusion }: Boards, { skins }: Asked, { origin, id }: Around): readonly Finding[] {
  const { max } = extentsOf(extrusion.section);
  const outside = place(sectionFrames[extrusion.view], [max.x, max.y, extrusion.length]);
  const ends = [
    ["left", "right"],
    ["rear", "front"],
    ["bottom", "top"],
  ] as const;
  return sizeNames.flatMap((key, axis) => {
    const boards = ends[axis]!.map((face) => depthOf(skins(face)));
    return tooSmall(key, outside[axis as 0 | 1 | 2], boards, below(origin, "outside", key), id);
  });
}

function tightLength(spec: EnclosureSpec, { extrusion }: Boards, { skins }: Asked, { origin, id }: Around) {
  const [key] = sizesFor[wayOf(spec)];
  const boards = endNames[extrusion.view].map((end) => depthOf(skins(end)));
  return tooSmall(key!, extrusion.length, boards, below(origin, "outside", key!), id);
}

function tooSmall(
  size: string,
  found: number,
  boards: readonly number[],
  at: Finding["at"][number],
  id: string,
): readonly Finding[] {
  const taken = boards.reduce((sum, board) => sum + board, 0);
  const least = taken + rules.leastInside.value;
  if (found >= least - 1e-9) return [];
  const facts = {
    size: text(size),
    found: mm(found),
    left: mm(found - taken),
    thickness: mm(taken / boards.length),
    least: mm(least),
  };
  return [raise(say.boxTooSmall, { at: [at], on: [id], facts })];
}

/** Walls of which nothing is left inside, and insides that cross themselves. */
function swallowed(
  spec: EnclosureSpec,
  { extrusion, inside, faces }: Boards,
  { origin, id }: Around,
): readonly Finding[] {
  const at = [below(origin, "outside", wayOf(spec) === "square" ? "width" : wayOf(spec))];
  const n = inside.section.length;
  const gone = extrusion.section.flatMap((outer, i) => {
    const next = extrusion.section[(i + 1) % n]!;
    const [a, b] = [inside.section[i]!, inside.section[(i + 1) % n]!];
    const long = Math.hypot(next.x - outer.x, next.y - outer.y);
    const left = ((b.x - a.x) * (next.x - outer.x) + (b.y - a.y) * (next.y - outer.y)) / long;
    const sheet = faces.find(({ name }) => name === outer.by)!.panel;
    return left > 0 && isBoard(sheet.outline) ? [] : [{ face: outer.by, long, taken: long - left }];
  });
  if (gone.length > 0) {
    return gone.map(({ face, long, taken }) => {
      const facts = { face: text(face), piece: text(id), ...(taken >= long && { long: mm(long), taken: mm(taken) }) };
      return raise(say.wallSwallowed, { at, on: [id], facts });
    });
  }
  if (profileFaults(inside.section).length === 0) return [];
  return [raise(say.noInside, { at, on: [id], facts: { piece: text(id), faces: all(wallNames(extrusion)) } })];
}

/** Still the right way round, after its ends are cut: less than nothing is left where it is not. */
function isBoard(outline: Profile): boolean {
  return areaOf(outline) > tolerance.samePoint;
}

const steepest = (rules.bladeTiltDeg.value * Math.PI) / 180 + 1e-6;

function steep(spec: EnclosureSpec, { faces }: Boards, { origin, id }: Around): readonly Finding[] {
  const at = [below(origin, spec.joints ? "joints" : "outside")];
  const found = new Map<string, number>();
  for (const { name, panel } of faces) {
    for (const [other, bevel] of Object.entries(panel.bevels)) {
      const corner = [name, other].sort().join(" + ");
      if (Math.abs(bevel) > steepest) found.set(corner, Math.max(found.get(corner) ?? 0, Math.abs(bevel)));
    }
  }
  return [...found].map(([corner, tilt]) => {
    const facts = {
      corner: text(corner),
      tilt: radians(tilt),
      most: radians((rules.bladeTiltDeg.value * Math.PI) / 180),
    };
    return raise(say.tiltTooSteep, { at, on: [id], facts });
  });
}
