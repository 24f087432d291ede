import { inverse, place, type Vector } from "../../geometry/frame.js";
import { pointInRegion } from "../../geometry/inside.js";
import { blockAround, cornersOf } from "../../geometry/solids-apart.js";
import { distanceOfSegments } from "../../geometry/solids-segments.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import { featureName } from "../../model/ids.js";
import type { Axis } from "../../model/joint.js";
import type { Part } from "../../model/part.js";
import type { Shop } from "../../model/shop.js";
import { rules } from "../../shop/rules.js";
import { nameOf, type Standing, seenFrom, standingParts } from "../standing.js";
import { type Bore, boresOf } from "./common/bores.js";
import { fastenerOf, tipOf } from "./common/fastener.js";

export const holesMeet: FindingDef = {
  code: "holes-meet",
  severity: "error",
  words: "{hole} and {other} in {part} run into each other: {apart} from middle to middle, {least} needed",
  next: "move one of them by {missing} along the joint",
  explain:
    "Screws that come from two faces meet in the board between them. The second one turns aside or splits the board, and a drill that meets a screw breaks.",
};

export const tipNearFace: FindingDef = {
  code: "tip-near-face",
  severity: "warning",
  words: "the tip of {fastener} ({length}) leaves {left} of {part} in front of it, where {least} is the least",
  next: "take a screw that is shorter by {missing}",
  explain:
    "A tip close under the far face lifts a bump or comes through. A hole that is meant to go through is not asked.",
};

export const insertOpensIntoAir: FindingDef = {
  code: "insert-opens-into-air",
  severity: "error",
  words: "the hole of {fastener} comes out of {part} into the air of {piece}",
  next: "glue a block behind it, or use a shorter insert",
  explain: "An insert's hole that goes through a wall lets air out along the thread. A block behind it closes it.",
};

export const holes: Check = {
  name: "holes in the board",
  findings: [holesMeet, tipNearFace, insertOpensIntoAir],
  run(_job, shop, plan) {
    const parts = standingParts(plan);
    return [
      ...plan.built.parts.flatMap(meetingIn),
      ...plan.built.axes.flatMap((axis) => tipFinding(axis, shop, parts)),
      ...plan.built.axes.flatMap((axis) => opensFinding(axis, plan, parts)),
    ];
  },
};

function meetingIn(part: Part): readonly Finding[] {
  const bores = boresOf(part);
  return bores.flatMap((one, i) =>
    bores
      .slice(i + 1)
      .filter((other) => one.feature.axis === undefined || one.feature.axis !== other.feature.axis)
      .flatMap((other) => meeting(part, one, other)),
  );
}

function meeting(part: Part, one: Bore, other: Bore): readonly Finding[] {
  const least = (one.hole.d + other.hole.d) / 2;
  // Most holes lie too far from each other to ask more closely.
  if (
    lengthOf(one.mouth, other.mouth) >
    lengthOf(one.mouth, one.bottom) + lengthOf(other.mouth, other.bottom) + least
  ) {
    return [];
  }
  const apart = distanceOfSegments(one.mouth, one.bottom, other.mouth, other.bottom);
  if (apart >= least) return [];
  return [
    raise(holesMeet, {
      at: [...one.feature.from, ...other.feature.from],
      on: [part.id, one.feature.id, other.feature.id],
      facts: {
        part: text(nameOf(part)),
        hole: text(featureName(one.feature.id)),
        other: text(featureName(other.feature.id)),
        apart: mm(apart),
        least: mm(least),
        missing: mm(least - apart),
      },
    }),
  ];
}

/** How much board the last part that a screw goes into keeps in front of its tip, where it goes into a face. */
function tipFinding(axis: Axis, shop: Shop, parts: readonly Standing[]): readonly Finding[] {
  const last = lastOf(axis, parts);
  const standing = parts.find(({ part }) => part.id === last?.part);
  const feature = standing?.part.features.find(({ id }) => id === last?.feature);
  const { length } = fastenerOf(axis.fastener, shop);
  if (standing === undefined || feature?.cut.kind !== "hole" || length === undefined) return [];
  if (last?.role === "clearance" || feature.cut.depth === "through" || typeof feature.side !== "string") return [];
  const depth = tipOf(seenFrom(standing, axis.ray), length)[2];
  const left = feature.side === "face" ? depth + standing.part.thickness : -depth;
  const least = rules.tipFloor.value;
  if (left >= least - tolerance.contact) return [];
  return [
    raise(tipNearFace, {
      at: axis.from,
      on: [axis.id, standing.part.id],
      facts: {
        fastener: text(axis.fastener),
        part: text(nameOf(standing.part)),
        length: mm(length),
        left: mm(Math.max(0, left)),
        least: mm(least),
        missing: mm(least - left),
      },
    }),
  ];
}

/** The part that a fastener reaches last: several pieces may have added to its stack, each in its own order. */
function lastOf(axis: Axis, parts: readonly Standing[]): Axis["stack"][number] | undefined {
  const deepest = ({ part: id }: Axis["stack"][number]) => {
    const standing = parts.find(({ part }) => part.id === id);
    if (standing === undefined) return Number.POSITIVE_INFINITY;
    const heights = cornersOf(standing).map((corner) => place(inverse(axis.ray), corner)[2]);
    return Math.min(...heights);
  };
  return axis.stack.toSorted((a, b) => deepest(a) - deepest(b))[0];
}

/** A thread's hole that comes out where there is air and no block. */
function opensFinding(axis: Axis, plan: Plan, parts: readonly Standing[]): readonly Finding[] {
  return axis.stack.flatMap(({ part: id, feature, role }) => {
    if (role !== "thread") return [];
    const standing = parts.find(({ part }) => part.id === id);
    const bore = standing && boresOf(standing.part).find((each) => each.feature.id === feature);
    if (standing === undefined || bore?.through !== true) return [];
    const out = place(standing.at, beyond(bore));
    const piece = standing.part.piece;
    if (!isInside(out, piece, plan, parts) || parts.some((part) => isInBoard(part, out))) return [];
    const facts = { fastener: text(axis.fastener), part: text(nameOf(standing.part)), piece: text(piece) };
    return [raise(insertOpensIntoAir, { at: axis.from, on: [axis.id, standing.part.id], facts })];
  });
}

/** Half a millimetre past the bottom of a hole. */
function beyond({ mouth, bottom }: Bore): Vector {
  const t = 0.5 / lengthOf(mouth, bottom);
  const past = (i: 0 | 1 | 2) => bottom[i] + (bottom[i] - mouth[i]) * t;
  return [past(0), past(1), past(2)];
}

function lengthOf(a: Vector, b: Vector): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
}

/** Whether a point lies between the walls of some air of the piece. */
function isInside(point: Vector, piece: string, plan: Plan, parts: readonly Standing[]): boolean {
  return plan.built.air.some(({ walls }) => {
    const round = parts.filter(({ part }) => part.piece === piece && walls.includes(part.id));
    if (round.length === 0) return false;
    const { min, max } = blockAround(round.flatMap(cornersOf));
    return [0, 1, 2].every((i) => point[i]! > min[i]! && point[i]! < max[i]!);
  });
}

function isInBoard(standing: Standing, point: Vector): boolean {
  const [x, y, z] = seenFrom(standing, { origin: point, quat: [0, 0, 0, 1] }).origin;
  return z < 0 && z > -standing.part.thickness && pointInRegion(standing.part.profile, { x, y });
}
