import type { Vector } from "../../geometry/frame.js";
import { upToStep } from "../common/method.js";
import { type AxisIndex, type FaceName, faceAt, faceNames, faces, type Span } from "./faces.js";

/** Outside width (x), depth (y) and height (z), mm. */
export type Outside = readonly [number, number, number];

export type Panels = {
  /** What the stack of panels makes of the sizes asked for: the same, unless they are snapped. */
  readonly outside: Outside;
  readonly spans: Readonly<Record<FaceName, Span>>;
  readonly inside: Span;
};

const axes = [0, 1, 2] as const;

/**
 * Cuts a box into six butt-jointed panels.
 *
 * `laps` says who covers whose edge: of two neighbours the one named first runs over the other. As that is one order
 * for all twelve edges, every corner is filled once and once only.
 *
 * With a `step` (a saw's fence) every panel length is a whole number of steps. Along each axis the shortest set of
 * panels, those that stand between others, is set first, since walls of one height must come from one fence setting;
 * the outside follows from it and the measured thickness, and panels that run over are taken up to the next step, so
 * that they stand proud by less than one step and are sanded flush, never short.
 */
export function panelsOf(asked: Outside, thickness: number, laps: readonly FaceName[], step?: number): Panels {
  const outside = axes.map((axis) => outsideAlong(axis, asked[axis], thickness, laps, step)) as unknown as Outside;
  const spans = Object.fromEntries(
    faceNames.map((name) => [name, spanOf(name, outside, thickness, laps, step)]),
  ) as Record<FaceName, Span>;
  const inside: Span = {
    min: [thickness, thickness, thickness],
    max: outside.map((size) => size - thickness) as unknown as Vector,
  };
  return { outside, spans, inside };
}

/** True where `face` runs over the edge of its neighbour `other`. */
export function lapsOver(face: FaceName, other: FaceName, laps: readonly FaceName[]): boolean {
  return laps.indexOf(face) < laps.indexOf(other);
}

/** How many thicknesses a face gives up to its neighbours along an axis. */
function givenUp(face: FaceName, axis: AxisIndex, laps: readonly FaceName[]): number {
  return (["min", "max"] as const).filter((end) => !lapsOver(face, faceAt(axis, end), laps)).length;
}

function outsideAlong(axis: AxisIndex, asked: number, thickness: number, laps: readonly FaceName[], step?: number) {
  if (step === undefined) return asked;
  const along = faceNames.filter((name) => faces[name].axis !== axis);
  const least = Math.max(...along.map((name) => givenUp(name, axis, laps)));
  return Math.round((asked - least * thickness) / step) * step + least * thickness;
}

function spanOf(face: FaceName, outside: Outside, thickness: number, laps: readonly FaceName[], step?: number): Span {
  const ends = axes.map((axis) => {
    if (axis === faces[face].axis) {
      return faces[face].end === "min" ? [0, thickness] : [outside[axis] - thickness, outside[axis]];
    }
    const overMin = lapsOver(face, faceAt(axis, "min"), laps);
    const overMax = lapsOver(face, faceAt(axis, "max"), laps);
    const from = overMin ? 0 : thickness;
    const to = overMax ? outside[axis] : outside[axis] - thickness;
    const proud = upToStep(to - from, step) - (to - from);
    return overMax || !overMin ? [from, to + proud] : [from - proud, to];
  });
  return {
    min: ends.map((end) => end[0]!) as unknown as Vector,
    max: ends.map((end) => end[1]!) as unknown as Vector,
  };
}
