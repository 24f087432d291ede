import type { Finding, Outcome } from "../../../input/finding.js";
import { type PartId, partId } from "../../../model/ids.js";
import type { Axis, Joint } from "../../../model/joint.js";
import type { Part } from "../../../model/part.js";
import type { Air, Around, Built, Gasket } from "../../../model/piece.js";
import { behind } from "../chambers/behind.js";
import type { Chamber } from "../chambers/divide.js";
import type { Sheet } from "../form/face.js";
import type { EnclosureSpec } from "../schema.js";
import { coveringOn, type Shape } from "../shape.js";
import { boltedBuys, boltToBuy, hatchBolt, hatchBuys } from "./bolts.js";
import { removableFindings } from "./check.js";
import { hatchFindings } from "./hatch/check.js";
import { coverRole, type Hatch, hatchL, hatchOf } from "./hatch/hatch.js";
import { coverAxes, coverPart, hatchSteps } from "./hatch/parts.js";
import { cutOutsOf, type Holed } from "./inTheWay.js";
import { battenJoints, battenParts, boltAxes } from "./parts.js";
import { battensOf, layerRole, type Removable, removablesOf } from "./removable.js";
import { boltedSteps, type Due } from "./steps.js";
import { removableTerms } from "./terms.js";

/** What of a box comes off again: panels that are bolted on, and a hatch. */
export type ComesOff = { readonly removables: readonly Removable[]; readonly hatch: Hatch | undefined };

export function comesOffOf(spec: EnclosureSpec, shape: Shape, around: Around): ComesOff {
  return { removables: removablesOf(spec, shape, around), hatch: hatchOf(spec, shape, around) };
}

export function comesOffParts(
  { removables, hatch }: ComesOff,
  spec: EnclosureSpec,
  around: Around,
): readonly Outcome<Part>[] {
  return [
    ...removables.flatMap((removable) => battenParts(removable, spec, around)),
    ...(hatch ? [coverPart(hatch, spec, around)] : []),
  ];
}

export function comesOffJoints({ removables }: ComesOff, shape: Shape, { id }: Around): readonly Joint[] {
  return removables.flatMap((removable) => battenJoints(removable, shape, id));
}

/** The axes of its bolts, box frame. */
export function comesOffAxes(
  { removables, hatch }: ComesOff,
  parts: readonly Part[],
  spec: EnclosureSpec,
  around: Around,
): readonly Axis[] {
  return [
    ...removables.flatMap((each) => boltAxes(each, boltToBuy(each, spec, around).value, parts, around.id)),
    ...(hatch ? coverAxes(hatch, hatchBolt(hatch, around).value, around) : []),
  ];
}

export function comesOffBuys({ removables, hatch }: ComesOff, spec: EnclosureSpec, around: Around): Built["buys"] {
  return [
    ...removables.flatMap((each) => boltedBuys(each, boltToBuy(each, spec, around).value)),
    ...(hatch ? hatchBuys(hatch, hatchBolt(hatch, around).value) : []),
  ];
}

export function comesOffSteps({ removables, hatch }: ComesOff, spec: EnclosureSpec, around: Around): readonly Due[] {
  return [
    ...boltedSteps(removables, around),
    ...(hatch ? hatchSteps(hatch, coveringOn(spec, hatch.face, around) > 0, around) : []),
  ];
}

export function comesOffFindings(
  { removables, hatch }: ComesOff,
  fitted: Holed,
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Finding[] {
  return [
    ...removableFindings(removables, fitted.seats, cutOutsOf(fitted, spec, shape, around), spec, shape, around),
    ...(hatch ? hatchFindings(hatch, fitted, spec, shape, around) : []),
  ];
}

/** What it takes of a chamber, and what it gives back, L. */
export function comesOffTerms(chamber: Chamber, spec: EnclosureSpec, shape: Shape, around: Around): Air["terms"] {
  const { removables, hatch } = comesOffOf(spec, shape, around);
  const isOver = hatch !== undefined && behind(hatch.face, hatch.at, shape)?.chamber === chamber;
  return [
    ...removableTerms(chamber, removables),
    ...(isOver ? [{ what: "air in the hatch", litres: hatchL(hatch), shaped: false }] : []),
  ];
}

/** The boards of its battens, as they stand. */
export const battenSheets = ({ removables }: ComesOff): readonly Sheet[] =>
  removables.flatMap(battensOf).flatMap(({ layers }) => layers);

export const gasketsOf = ({ removables }: ComesOff): readonly Gasket[] =>
  removables.flatMap(({ rings }) => rings.map(({ gasket }) => gasket));

/** Parts of it that stand outside and are no walls. */
export const outsideParts = ({ hatch }: ComesOff, { id }: Around): readonly PartId[] =>
  hatch ? [partId(id, coverRole)] : [];

/** Parts of it that shut no air in: its battens stand in it, a cover outside. */
export const noWalls = (loose: ComesOff, around: Around): readonly PartId[] => [
  ...outsideParts(loose, around),
  ...loose.removables
    .flatMap(battensOf)
    .flatMap((batten) => batten.layers.map((_, layer) => partId(around.id, layerRole(batten, layer)))),
];
