import { compose, type Frame, frameFromAxes, inverse, place, type Vector } from "../../geometry/frame.js";
import type { Point } from "../../geometry/profile.js";
import type { Origin } from "../../input/finding.js";
import { type AxisId, axisId, featureId, type PieceId, partId } from "../../model/ids.js";
import type { Axis, Joint } from "../../model/joint.js";
import type { Screw } from "../../model/shop.js";
import { rules } from "../../shop/rules.js";
import type { Draft } from "../common/part.js";
import { type FaceName, faceFrame, faceNames, faceSize, faces } from "./faces.js";
import { lapsOver } from "./panels.js";
import type { Shape } from "./shape.js";

/** A screw through the face of one panel into the edge of another. */
export type JointScrew = {
  readonly axis: AxisId;
  readonly joint: string;
  readonly over: FaceName;
  readonly into: FaceName;
  /** On the lapping panel, its own axes. */
  readonly through: Point;
  /** On the outline of the other panel, its own axes. */
  readonly enters: Point;
  /** How far below the other panel's face. */
  readonly below: number;
};

export type ScrewChoice = { readonly row: Screw; readonly name: string; readonly length: number };

/** Pairs of neighbours, the lapping one first: twelve edges of the box. */
export function pairsOf(shape: Shape): readonly (readonly [FaceName, FaceName])[] {
  return faceNames.flatMap((over) =>
    faceNames
      .filter((into) => faces[into].axis !== faces[over].axis && lapsOver(over, into, shape.laps))
      .map((into) => [over, into] as const),
  );
}

export const jointName = (piece: PieceId, over: FaceName, into: FaceName) => `${piece}:${over}+${into}`;

/** Joints for all twelve edges, with the screws that hold them until, and after, the glue sets. */
export function jointsOf(piece: PieceId, shape: Shape, screws: readonly JointScrew[]): readonly Joint[] {
  return pairsOf(shape).map(([over, into]) => {
    const id = jointName(piece, over, into);
    return {
      id,
      form: "butt",
      laps: partId(piece, over),
      into: partId(piece, into),
      edges: [over],
      axes: screws.filter((screw) => screw.joint === id).map((screw) => screw.axis),
      glue: true,
    };
  });
}

/** Screws for all twelve edges. */
export function jointScrewsOf(piece: PieceId, shape: Shape): readonly JointScrew[] {
  return pairsOf(shape).flatMap(([over, into]) => {
    const ends = edgeOf(into, over, shape);
    const overFrame = inverse(faceFrame(over, shape.spans[over]));
    const intoFrame = faceFrame(into, shape.spans[into]);
    const length = Math.hypot(ends[1].x - ends[0].x, ends[1].y - ends[0].y);
    return alongEdge(length).map((distance, index) => {
      const t = distance / length;
      const enters = { x: ends[0].x + (ends[1].x - ends[0].x) * t, y: ends[0].y + (ends[1].y - ends[0].y) * t };
      const below = shape.thickness / 2;
      const through = place(overFrame, place(intoFrame, [enters.x, enters.y, -below]));
      return {
        axis: axisId(piece, `screw.${over}.${into}.${index + 1}`),
        joint: jointName(piece, over, into),
        over,
        into,
        through: { x: through[0], y: through[1] },
        enters,
        below,
      };
    });
  });
}

/**
 * Distances along an edge at which screws go in: clear of both corners by the rule for a thread in an edge, then
 * evenly, no further apart than the usual spacing. An edge too short for two takes one in its middle.
 */
export function alongEdge(length: number): readonly number[] {
  const short = length < rules.shorterWall.value;
  const corner = short ? Math.max(rules.edgeThreadLeast.value, length / 4) : rules.edgeThreadToCorner.value;
  const span = length - 2 * corner;
  if (span < rules.edgeThreadLeast.value) return [length / 2];
  const gaps = Math.max(1, Math.ceil(span / rules.screwSpacing.value));
  return Array.from({ length: gaps + 1 }, (_, index) => corner + (span * index) / gaps);
}

/** The pilot holes and clearance holes of one panel. */
export function screwDrafts(
  face: FaceName,
  screws: readonly JointScrew[],
  choice: ScrewChoice,
  thickness: number,
  from: readonly Origin[],
): readonly Draft[] {
  return screws.flatMap((screw): Draft[] => {
    const name = nameOf(screw);
    if (screw.over === face) return [{ name, from, axis: screw.axis, cut: clearance(screw, choice.row) }];
    if (screw.into !== face) return [];
    const depth = choice.length - thickness + rules.pilotDeeper.value;
    const cut = { kind: "hole", at: screw.enters, below: screw.below, d: choice.row.pilot, depth } as const;
    return [{ name, from, axis: screw.axis, side: { edge: screw.over }, cut, stage: "bench" }];
  });
}

function clearance(screw: JointScrew, { clearance: d, head }: Screw): Draft["cut"] {
  const depth = (head.d - d) / 2 / Math.tan(head.angle / 2);
  return { kind: "hole", at: screw.through, d, depth: "through", sink: { d: head.d, depth, angle: head.angle } };
}

/** The axes of the joint screws, box frame: the ray starts where the head lies and points out of the box. */
export function screwAxes(
  piece: PieceId,
  shape: Shape,
  screws: readonly JointScrew[],
  choice: ScrewChoice,
  from: readonly Origin[],
): readonly Axis[] {
  return screws.map((screw) => ({
    id: screw.axis,
    from,
    ray: rayOf(screw, shape),
    fastener: choice.name,
    stack: [
      {
        part: partId(piece, screw.over),
        feature: featureId(partId(piece, screw.over), nameOf(screw)),
        role: "clearance",
      },
      { part: partId(piece, screw.into), feature: featureId(partId(piece, screw.into), nameOf(screw)), role: "pilot" },
    ],
  }));
}

function rayOf(screw: JointScrew, shape: Shape): Frame {
  const at: Vector = [screw.through.x, screw.through.y, 0];
  return compose(faceFrame(screw.over, shape.spans[screw.over]), frameFromAxes(at, [1, 0, 0], [0, 1, 0]));
}

const nameOf = (screw: JointScrew) => screw.axis.slice(screw.axis.indexOf(":") + 1);

/** Both ends of the edge of `face` that meets its neighbour `other`, in the panel's axes, counter-clockwise. */
function edgeOf(face: FaceName, other: FaceName, shape: Shape): readonly [Point, Point] {
  const { width: w, height: h } = faceSize(face, shape.spans[face]);
  const corners = [
    { x: 0, y: 0 },
    { x: w, y: 0 },
    { x: w, y: h },
    { x: 0, y: h },
  ];
  const index = faces[face].edges.indexOf(other);
  return [corners[index]!, corners[(index + 1) % 4]!];
}
