import { nearestOn } from "../../../geometry/distance.js";
import { compose, type Frame, frameAlong, type Vector } from "../../../geometry/frame.js";
import { pointInProfile } from "../../../geometry/inside.js";
import type { Point } from "../../../geometry/profile.js";
import { tolerance } from "../../../geometry/tolerance.js";
import { below, type Origin } from "../../../input/finding.js";
import type { PieceId } from "../../../model/ids.js";
import type { Around, Tube } from "../../../model/piece.js";
import { type Axis, axisAcross, lineAcross } from "../chambers/across.js";
import type { Chamber } from "../chambers/divide.js";
import { chamberCalled } from "../chambers/fitOut.js";
import { chordOf, edgeLine } from "../chambers/section.js";
import { crossing } from "../form/lines.js";
import type { Inside } from "../inside.js";
import { type EnclosureSpec, sizeNames } from "../schema.js";
import type { Shape } from "../shape.js";
import type { DowelSpec } from "./roundKeys.js";

/** A round bar from wall to wall of a chamber. `at`: its middle on the first wall, z along it, in the piece's frame. mm. */
export type Dowel = {
  readonly name: string;
  /** Its place in the job's list. */
  readonly index: number;
  readonly from: Origin;
  readonly chamber: Chamber;
  readonly thick: number;
  readonly long: number;
  readonly at: Frame;
};

/** `leans`: one of the walls it runs to is not square to it. */
export type NoDowel = { readonly index: number; readonly why: "chamber" | "outside" | "leans" };

export type Dowels = { readonly stand: readonly Dowel[]; readonly unfit: readonly NoDowel[] };

export function dowelsOf(spec: EnclosureSpec, shape: Shape, around: Around): Dowels {
  const tried = (spec.dowels ?? []).map((wanted, index) => dowelAt(wanted, index, shape, around));
  return {
    stand: tried.flatMap((each) => ("why" in each ? [] : [each])),
    unfit: tried.flatMap((each) => ("why" in each ? [each] : [])),
  };
}

function dowelAt(wanted: DowelSpec, index: number, { fitOut, extrusion }: Shape, around: Around): Dowel | NoDowel {
  const chamber = chamberCalled(wanted.in, fitOut.chambers);
  if (chamber === undefined) return { index, why: "chamber" };
  const axis = (size: (typeof sizeNames)[number]) => axisAcross(size, extrusion.view);
  const others = sizeNames.filter((size) => size !== wanted.across);
  const places = Object.fromEntries(others.map((size, i) => [axis(size), wanted.at[i]!]));
  const { air } = chamber;
  const bar =
    axis(wanted.across) === "length"
      ? alongExtrusion({ x: places["x"]!, y: places["y"]! }, wanted.thick / 2, air)
      : acrossSection(axis(wanted.across), places, wanted.thick / 2, air);
  if (typeof bar === "string") return { index, why: bar };
  const { thick } = wanted;
  const from = below(around.origin, "dowels", index);
  return { name: `dowel ${index + 1}`, index, from, chamber, thick, long: bar.long, at: compose(air.frame, bar.at) };
}

type Bar = { readonly at: Frame; readonly long: number };

function alongExtrusion(point: Point, radius: number, { section, from, to }: Inside): Bar | "outside" {
  const room = pointInProfile(section, point) ? (nearestOn(section, point)?.distance ?? 0) : 0;
  if (room < radius - tolerance.samePoint) return "outside";
  return { at: frameAlong([point.x, point.y, from], [0, 0, 1]), long: to - from };
}

/** From wall to wall of the section; both ends must be square, or the bar would have to be cut at an angle. */
function acrossSection(
  axis: Axis,
  places: Readonly<Record<string, number>>,
  radius: number,
  { section, from, to }: Inside,
): Bar | "outside" | "leans" {
  const [beside, height] = [places[axis === "x" ? "y" : "x"]!, places["length"]!];
  if (height - radius < from - tolerance.samePoint || height + radius > to + tolerance.samePoint) return "outside";
  const runs = [-1, 0, 1].map((side) => runAt(axis, beside + side * (radius - tolerance.samePoint), { section }));
  const [low, middle, high] = runs;
  if (low === undefined || middle === undefined || high === undefined) return "outside";
  const square = [low, high].every((run) => run.every((at, i) => Math.abs(at - middle[i]!) < tolerance.contact));
  if (!square) return "leans";
  const [a, b] = middle;
  const along: Vector = axis === "x" ? [1, 0, 0] : [0, 1, 0];
  const begins: Vector = axis === "x" ? [a, beside, height] : [beside, a, height];
  return { at: frameAlong(begins, along), long: b - a };
}

/** From where to where a line along an axis runs through the section, mm. */
function runAt(
  axis: Axis,
  beside: number,
  { section }: Pick<Inside, "section">,
): readonly [number, number] | undefined {
  const line = lineAcross(axis === "x" ? "y" : "x", beside);
  const chord = chordOf(section, line);
  if (chord === undefined) return undefined;
  const ends = [chord.start, chord.end].map(
    (edge) => crossing(line, edgeLine(section, edge))[axis === "x" ? "x" : "y"],
  );
  return [Math.min(...ends), Math.max(...ends)];
}

/** What a dowel takes of the air, L. */
export const dowelL = ({ thick, long }: Dowel): number => (Math.PI * thick * thick * long) / 4 / 1e6;

export function tubeOfDowel({ name, from, at, long, thick }: Dowel, { stands }: Shape, piece: PieceId): Tube {
  return { name, piece, from: [from], stretches: [{ at: compose(stands, at), length: long, d: thick, dTo: thick }] };
}
