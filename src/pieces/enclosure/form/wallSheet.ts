import { compose, type Frame, frameFromAxes, shifted, turn, type Vector } from "../../../geometry/frame.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import { type Extrusion, endNames, sectionFrames } from "./extrusion.js";
import type { Sheet } from "./face.js";
import type { Run } from "./walls.js";

/** How a wall's own axes lie: where a place along its edge and along the extrusion comes to on its face. */
export type WallAxes = { readonly frame: Frame; readonly onFace: (along: number, up: number) => Point };

/** Leaning less than this a wall is level, and seen from above or below. */
const level = 1e-9;

/**
 * The frame of a wall's outside as one reads it standing before it: y up where the wall is upright or leans, else
 * forward for what lies up, and the other way for what lies down. z out of the box.
 */
export function wallAxes({ view, section, length }: Extrusion, i: number): WallAxes {
  const [a, b] = [section[i]!, section[(i + 1) % section.length]!];
  const edge = Math.hypot(b.x - a.x, b.y - a.y);
  const inBox = sectionFrames[view];
  const along = turn(inBox.quat, [(b.x - a.x) / edge, (b.y - a.y) / edge, 0]);
  const up = turn(inBox.quat, [0, 0, 1]);
  const at = (corner: Point, height: number) => compose(inBox, shifted(corner.x, corner.y, height)).origin;
  if (view === "plan") return { frame: frameFromAxes(at(a, 0), along, up), onFace: (s, e) => ({ x: s, y: e }) };
  if (along[2] > level) {
    return { frame: frameFromAxes(at(a, length), back(up), along), onFace: (s, e) => ({ x: length - e, y: s }) };
  }
  return { frame: frameFromAxes(at(b, 0), up, back(along)), onFace: (s, e) => ({ x: e, y: edge - s }) };
}

const back = ([x, y, z]: Vector): Vector => [0 - x, 0 - y, 0 - z];

/** What bounds a wall's sheet: the walls before and after it along the section, the ends at both ends of the extrusion. */
export type Bounds = { readonly before: string; readonly after: string; readonly low: string; readonly high: string };

export function boundsOf({ section, view }: Extrusion, i: number): Bounds {
  const n = section.length;
  const [low, high] = endNames[view];
  return { before: section[(i + n - 1) % n]!.by, after: section[(i + 1) % n]!.by, low, high };
}

/** A wall's board, `deep` mm behind its outside, between these cuts. */
export function wallSheet(axes: WallAxes, bounds: Bounds, along: Run, up: Run, deep: number, thickness: number): Sheet {
  const [s0, s1] = along.face;
  const [e0, e1] = up.face;
  const corner = (s: number, e: number, by: string) => ({ ...axes.onFace(s, e), bulge: 0, by });
  const outline = [
    corner(s0, e0, bounds.low),
    corner(s1, e0, bounds.after),
    corner(s1, e1, bounds.high),
    corner(s0, e1, bounds.before),
  ];
  const bevels = {
    [bounds.before]: bevelOf(along.back[0] - s0, thickness),
    [bounds.after]: bevelOf(s1 - along.back[1], thickness),
    [bounds.low]: bevelOf(up.back[0] - e0, thickness),
    [bounds.high]: bevelOf(e1 - up.back[1], thickness),
  };
  return sheetAt(axes.frame, outline, bevels, deep, thickness);
}

/** A sheet in a face's axes, moved so that its own begin at its lower left corner. */
export function sheetAt(
  face: Frame,
  outline: Profile,
  bevels: Readonly<Record<string, number>>,
  deep: number,
  thickness: number,
): Sheet {
  const x = Math.min(...outline.map((corner) => corner.x));
  const y = Math.min(...outline.map((corner) => corner.y));
  const moved = outline.map((corner) => ({ ...corner, x: corner.x - x, y: corner.y - y }));
  const first = moved.reduce(
    (least, { x: cx, y: cy }, i) => (cx + cy < moved[least]!.x + moved[least]!.y ? i : least),
    0,
  );
  return {
    frame: compose(face, shifted(x, y, -deep)),
    outline: [...moved.slice(first), ...moved.slice(0, first)],
    bevels: Object.fromEntries(Object.entries(bevels).filter(([, bevel]) => bevel !== 0)),
    thickness,
  };
}

/** Less than this in the thickness of a board is no bevel, mm. */
const noBevel = 1e-9;

/** The bevel of an edge whose back falls short of its face by `short` mm. rad. */
export function bevelOf(short: number, thickness: number): number {
  return Math.abs(short) < noBevel || thickness === 0 ? 0 : Math.atan(short / thickness);
}
