import { compose, shifted } from "../../geometry/frame.js";
import { type Finding, hasErrors, type Outcome } from "../../input/finding.js";
import type { Around, Offer, PieceKind } from "../../model/piece.js";
import { buildBox } from "./build.js";
import { bulkOf } from "./bulk.js";
import * as say from "./findings.js";
import { boardFindings, formFindings, specFindings } from "./form/check.js";
import { entriesOf } from "./mounting/seats.js";
import { freeSize, referencesOf } from "./references.js";
import { boltedFindings } from "./removable/check.js";
import { type EnclosureSpec, enclosureSchema } from "./schema.js";
import { missingVolume, settledShape } from "./settled.js";
import { coveringOn, frameOn, pointOn, type Shape } from "./shape.js";

/** A closed box, square or of any profile, with drivers, a terminal, and threads for what is bolted to it. */
export const enclosure: PieceKind<EnclosureSpec> = {
  kind: "enclosure",
  schema: enclosureSchema,
  findings: say.enclosureFindings,
  refs: referencesOf,
  free: freeSize,
  offer: offerBox,
  ask: () => ({ value: [], findings: [] }),
  miss: missingVolume,
  bulk: bulkOf,
  build: buildBox,
};

/** Its faces as planes and outlines, with their covering on, and the drivers' places on them. */
function offerBox(spec: EnclosureSpec, size: number, around: Around): Outcome<Offer> {
  const said = checked(spec, size, around);
  if (hasErrors(said)) return { value: undefined, findings: said };
  const shape = settledShape(spec, size, around);
  const value: Offer = {
    stands: shape.stands,
    planes: Object.fromEntries(
      shape.faces.map((face) => [face.name, compose(face.frame, shifted(0, 0, coveringOn(spec, face, around)))]),
    ),
    outlines: Object.fromEntries(shape.faces.map(({ name, outline }) => [name, { outer: outline, holes: [] }])),
    drivers: driverOffers(spec, shape),
  };
  return { value, findings: said };
}

/** Each question only where the ones before it have their answer: no corner is looked at of a profile that is none. */
function checked(spec: EnclosureSpec, size: number, around: Around): readonly Finding[] {
  for (const ask of [specFindings, boltedFindings, formFindings, boardFindings]) {
    const found = ask(spec, size, around);
    if (hasErrors(found)) return found;
  }
  return [];
}

/** By their names; the first is also plainly "driver". */
function driverOffers(spec: EnclosureSpec, shape: Shape): Offer["drivers"] {
  const offers = entriesOf(spec).flatMap(({ name, spec: { is, in: plane, at } }) => {
    const face = shape.faces.find((each) => each.name === plane);
    return face === undefined ? [] : [[name, { is, plane, at: frameOn(face, pointOn(face, at)) }] as const];
  });
  const [first] = offers;
  return Object.fromEntries([...(first ? [["driver", first[1]] as const] : []), ...offers]);
}
