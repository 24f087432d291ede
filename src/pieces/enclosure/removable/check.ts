import { tolerance } from "../../../geometry/tolerance.js";
import { all, below, type Finding, type FindingDef, mm, raise, text } from "../../../input/finding.js";
import { axisId, partId } from "../../../model/ids.js";
import type { Around } from "../../../model/piece.js";
import { airName } from "../chambers/divide.js";
import { isBolted, onSheet } from "../form/face.js";
import { workedOut } from "../form/workedOut.js";
import type { Seat } from "../mounting/seats.js";
import type { EnclosureSpec } from "../schema.js";
import type { Shape } from "../shape.js";
import { boltToBuy } from "./bolts.js";
import * as say from "./findings.js";
import { type Bar, type CutOut, inTheWay } from "./inTheWay.js";
import { battensOf, layerRole, type Removable } from "./removable.js";
import { runsInto } from "./runsInto.js";

/** What is wrong with how panels that are bolted on meet their neighbours, before any board is worked out. */
export function boltedFindings(spec: EnclosureSpec, size: number, around: Around): readonly Finding[] {
  const { asked } = workedOut(spec, size, around);
  return Object.entries(spec.panels ?? {}).flatMap(([name, own]): readonly Finding[] => {
    if (own.bolted === undefined) return [];
    const about = (def: FindingDef, facts: Finding["facts"], ...path: readonly string[]) =>
      raise(def, {
        at: [below(around.origin, "panels", name, ...path)],
        on: [around.id],
        facts: { face: text(name), ...facts },
      });
    if (own.double !== undefined) return [about(say.boltedDouble, {}, "double")];
    return asked.meetings.flatMap(({ over, into, form, turn }): readonly Finding[] => {
      if (over !== name && into !== name) return [];
      const other = over === name ? into : over;
      if (isBolted(asked.skins(other))) {
        return over === name ? [about(say.boltedFacesMeet, { other: text(other) }, "bolted")] : [];
      }
      if (turn < 0) return [about(say.boltedGoesIn, { other: text(other) }, "bolted")];
      if (form === "butt" || form === "square") return [];
      return [about(say.boltedCorner, { other: text(other), form: text(form) }, "bolted")];
    });
  });
}

/** What is wrong with the panels that are bolted on, as they come out. */
export function removableFindings(
  removables: readonly Removable[],
  seats: readonly Seat[],
  cutOuts: readonly CutOut[],
  spec: EnclosureSpec,
  shape: Shape,
  around: Around,
): readonly Finding[] {
  const bars = removables.flatMap((removable) => barsOf(removable));
  return [
    ...removables.flatMap((removable) => [
      ...tooNarrow(removable, around),
      ...intoBoards(removable, shape, around),
      ...boltToBuy(removable, spec, around).findings,
      ...underFrames(removable, seats, around),
      ...onGasket(removable, shape, around),
      ...portsOn(removable, spec, shape, around),
    ]),
    ...inTheWay(bars, cutOuts, around),
  ];
}

/** The boards of the battens under a panel. */
export const barsOf = (removable: Removable): readonly Bar[] =>
  battensOf(removable).flatMap((batten) =>
    batten.layers.map((sheet, layer) => ({ role: layerRole(batten, layer), sheet, from: removable.from })),
  );

function tooNarrow({ narrow, face, from, wide }: Removable, around: Around): readonly Finding[] {
  return narrow.map((chamber) => {
    const facts = { face: text(face.name), wide: mm(wide), air: text(airName(chamber, around)) };
    return raise(say.noRoomForBattens, { at: [from], on: [partId(around.id, face.name)], facts });
  });
}

/** Battens that reach into what stands behind the panel. */
function intoBoards({ rings, face, from }: Removable, shape: Shape, { id }: Around): readonly Finding[] {
  return rings.flatMap(({ chamber, battens }) =>
    battens.flatMap((batten) =>
      batten.layers.flatMap((sheet, layer): readonly Finding[] => {
        const other = runsInto(sheet, chamber, shape);
        if (other === undefined) return [];
        const role = layerRole(batten, layer);
        const facts = {
          batten: text(role.replaceAll(".", " ")),
          face: text(face.name),
          other: text(other.replaceAll(".", " ")),
        };
        return [raise(say.battenMeetsBoard, { at: [from], on: [partId(id, role)], facts })];
      }),
    ),
  );
}

/** Bolts whose heads lie under a driver's frame. */
function underFrames(removable: Removable, seats: readonly Seat[], { id }: Around): readonly Finding[] {
  const { face, from, bolt } = removable;
  const heads = battensOf(removable).flatMap(({ bolts }) => bolts);
  return seats.flatMap((seat): readonly Finding[] => {
    if (seat.face !== face || bolt === undefined) return [];
    const middle = onSheet(face, face.panel, seat.at);
    const least = (seat.recess?.across ?? seat.driver.frame ?? seat.cutOut) / 2 + bolt.head.d / 2;
    const short = heads.map(({ x, y }) => least - Math.hypot(x - middle.x, y - middle.y));
    const under = short.flatMap((by, i) => (by > tolerance.contact ? [axisId(id, `bolt.${face.name}.${i + 1}`)] : []));
    if (under.length === 0) return [];
    const facts = {
      bolts: all(under),
      face: text(face.name),
      driver: text(seat.is),
      missing: mm(Math.max(...short)),
    };
    return [raise(say.boltUnderFrame, { at: [seat.from, from], on: [partId(id, face.name)], facts })];
  });
}

function onGasket({ rings, face, from }: Removable, { fitOut }: Shape, { id }: Around): readonly Finding[] {
  return fitOut.dividers
    .filter(({ role }) => rings.some(({ air }) => air.outline.some(({ by }) => by === role)))
    .map(({ role, from: divider }) => {
      const facts = { divider: text(role.replaceAll(".", " ")), face: text(face.name) };
      return raise(say.dividerOnGasket, { at: [from, divider], on: [partId(id, role)], facts });
    });
}

function portsOn(
  { face, from }: Removable,
  spec: EnclosureSpec,
  { fitOut }: Shape,
  { id }: Around,
): readonly Finding[] {
  return fitOut.slots
    .filter(({ boards, index, face: mouth }) => {
      const meets = boards.some(({ sheet }) => sheet.outline.some(({ by }) => by === face.name));
      return meets || mouth === face || spec["slot ports"]?.[index]?.beside === face.name;
    })
    .map(({ index }) => {
      const facts = { port: text(`port ${index + 1}`), face: text(face.name) };
      return raise(say.portOnBolted, { at: [from], on: [partId(id, face.name)], facts });
    });
}
