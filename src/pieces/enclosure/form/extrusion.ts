import { type Frame, frameFromAxes, identity } from "../../../geometry/frame.js";
import { extentsOf } from "../../../geometry/measure.js";
import type { Point, Profile } from "../../../geometry/profile.js";

/** From where the section of a box is seen: from its right side, or from above. */
export type View = "side" | "plan";

/**
 * The outside of a box: a section extruded and capped at both ends. The section is counter-clockwise, its straight edges
 * named after their walls, its extents begin at 0, 0. mm.
 */
export type Extrusion = {
  readonly view: View;
  readonly section: Profile;
  readonly length: number;
};

/** The section's frame in the box frame: seen from the side x is forward and y up, from above x to the right and y forward. */
export const sectionFrames: Readonly<Record<View, Frame>> = {
  side: frameFromAxes([0, 0, 0], [0, 1, 0], [0, 0, 1]),
  plan: identity,
};

/** The names of the two ends, the one where the extrusion begins first. */
export const endNames: Readonly<Record<View, readonly [string, string]>> = {
  side: ["left", "right"],
  plan: ["bottom", "top"],
};

export const wallNames = ({ section }: Extrusion): readonly string[] => section.map(({ by }) => by);

export const faceNamesOf = (extrusion: Extrusion): readonly string[] => [
  ...wallNames(extrusion),
  ...endNames[extrusion.view],
];

/** The same section with its extents beginning at 0, 0. */
export function atOrigin(section: Profile): Profile {
  const { min } = extentsOf(section);
  return section.map((vertex) => ({ ...vertex, x: vertex.x - min.x, y: vertex.y - min.y }));
}

/** How far the section turns at its corner `k`, rad: positive where the corner juts out of the box. */
export function turnAtCorner(section: readonly Point[], k: number): number {
  const n = section.length;
  const [a, b, c] = [section[(k + n - 1) % n]!, section[k]!, section[(k + 1) % n]!];
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

/** Whether a wall stands in a corner of the section that goes in. */
export function isInsideCorner({ section }: Extrusion, wall: string): boolean {
  const i = section.findIndex(({ by }) => by === wall);
  return i >= 0 && [i, (i + 1) % section.length].some((k) => turnAtCorner(section, k) < 0);
}
