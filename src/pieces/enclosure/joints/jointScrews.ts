import { compose, type Frame, frameFromAxes, inverse, place } from "../../../geometry/frame.js";
import type { Point, Profile } from "../../../geometry/profile.js";
import type { Origin } from "../../../input/finding.js";
import { type AxisId, axisId, featureId, type PieceId, partId } from "../../../model/ids.js";
import type { Axis } from "../../../model/joint.js";
import type { Screw } from "../../../model/shop.js";
import { rules } from "../../../shop/rules.js";
import type { Draft } from "../../common/part.js";
import type { Plate, Screwed } from "./screwed.js";

export type ScrewChoice = { readonly row: Screw; readonly name: string; readonly length: number };

/** A screw through the face of one panel into the edge of another. */
export type JointScrew = {
  readonly axis: AxisId;
  readonly joint: string;
  readonly choice: ScrewChoice;
  readonly over: Plate;
  readonly into: Plate;
  /** On the panel that covers, its own axes. */
  readonly through: Point;
  /** On the outline of the other panel, its own axes. */
  readonly enters: Point;
  /** How far below the other panel's face. */
  readonly below: number;
  /** How deep its pilot goes into the edge. */
  readonly pilot: number;
};

/** Screws for all joints that take them and for which there is a screw. */
export function jointScrewsOf(
  piece: PieceId,
  joints: readonly Screwed[],
  choose: (passed: number, board: number) => ScrewChoice | undefined,
): readonly JointScrew[] {
  return joints.flatMap(({ joint, over, into, passed, mayPass = () => true }) => {
    const choice = choose(passed, over.panel.thickness);
    const ends = edgeNamed(into.panel.outline, over.name);
    if (choice === undefined || ends === undefined) return [];
    const toOver = compose(inverse(over.panel.frame), into.panel.frame);
    const [a, b] = ends;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const below = into.panel.thickness / 2;
    return alongEdge(length).flatMap((distance, index): JointScrew[] => {
      const t = distance / length;
      const enters = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
      const [x, y] = place(toOver, [enters.x, enters.y, -below]);
      if (!mayPass({ x, y })) return [];
      return [
        {
          axis: axisId(piece, `screw.${over.name}.${into.name}.${index + 1}`),
          joint,
          choice,
          over,
          into,
          through: { x, y },
          enters,
          below,
          pilot: choice.length - passed + rules.pilotDeeper.value,
        },
      ];
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

/** The pilot holes and clearance holes of one board. */
export function screwDrafts(
  { name: board }: Pick<Plate, "name">,
  screws: readonly JointScrew[],
  from: readonly Origin[],
): readonly Draft[] {
  return screws.flatMap((screw): Draft[] => {
    const name = nameOf(screw);
    const { row } = screw.choice;
    if (screw.over.name === board) return [{ name, from, axis: screw.axis, cut: clearance(screw, row) }];
    if (screw.into.name !== board) return [];
    const cut = { kind: "hole", at: screw.enters, below: screw.below, d: row.pilot, depth: screw.pilot } as const;
    return [{ name, from, axis: screw.axis, side: { edge: screw.over.name }, cut, stage: "bench" }];
  });
}

function clearance(screw: JointScrew, { clearance: d, head }: Screw): Draft["cut"] {
  const depth = (head.d - d) / 2 / Math.tan(head.angle / 2);
  return { kind: "hole", at: screw.through, d, depth: "through", sink: { d: head.d, depth, angle: head.angle } };
}

/** The axes of the joint screws, box frame: the ray starts where the head lies and points out of the box. */
export function screwAxes(piece: PieceId, screws: readonly JointScrew[], from: readonly Origin[]): readonly Axis[] {
  return screws.map((screw) => {
    const at = (face: Plate, role: "clearance" | "pilot") => {
      const part = partId(piece, face.name);
      return { part, feature: featureId(part, nameOf(screw)), role };
    };
    return {
      id: screw.axis,
      from,
      ray: rayOf(screw),
      fastener: screw.choice.name,
      stack: [at(screw.over, "clearance"), at(screw.into, "pilot")],
    };
  });
}

function rayOf({ through, over }: JointScrew): Frame {
  return compose(over.panel.frame, frameFromAxes([through.x, through.y, 0], [1, 0, 0], [0, 1, 0]));
}

const nameOf = (screw: JointScrew) => screw.axis.slice(screw.axis.indexOf(":") + 1);

/** Both ends of the edge of an outline with this name, counter-clockwise. */
export function edgeNamed(outline: Profile, name: string): readonly [Point, Point] | undefined {
  const i = outline.findIndex(({ by }) => by === name);
  return i < 0 ? undefined : [outline[i]!, outline[(i + 1) % outline.length]!];
}
