import { compose } from "../../../geometry/frame.js";
import type { Point } from "../../../geometry/profile.js";
import { circle } from "../../../geometry/shapes.js";
import { axisId, featureId, type PieceId, partId } from "../../../model/ids.js";
import type { Axis } from "../../../model/joint.js";
import type { Around, Mount } from "../../../model/piece.js";
import { rules } from "../../../shop/rules.js";
import type { Draft } from "../../common/part.js";
import { behind } from "../chambers/behind.js";
import { airName } from "../chambers/divide.js";
import { liningRole, onSheet, type Sheet } from "../form/face.js";
import { frameOn, type Shape } from "../shape.js";
import type { Seat } from "./seats.js";

/** A driver's cut-out, the recess of its frame and the pilots of its screws, on the panel of its face. */
export function seatDrafts(piece: PieceId, seat: Seat): readonly Draft[] {
  const { face, name, recess } = seat;
  const centre = onSheet(face, face.panel, seat.at);
  const from = [seat.from];
  const disc = (by: string, across: number) => ({ outer: circle(centre, across / 2, by), holes: [] });
  return [
    openingDraft(seat, centre),
    ...(recess === undefined
      ? []
      : [
          {
            name: `recess.${name}`,
            from,
            cut: { kind: "pocket", corner: "bit", depth: recess.deep, region: disc(`recess.${name}`, recess.across) },
          } as const,
        ]),
    ...pilots(piece, seat, face.panel, 0),
  ];
}

/** The same on the board behind. */
export function liningDrafts(piece: PieceId, seat: Seat, lining: Sheet): readonly Draft[] {
  const centre = onSheet(seat.face, lining, seat.at);
  return [openingDraft(seat, centre), ...pilots(piece, seat, lining, seat.face.panel.thickness)];
}

function openingDraft({ name, is, from, cutOut }: Seat, centre: Point): Draft {
  const by = `opening.${name}`;
  const region = { outer: circle(centre, cutOut / 2, by), holes: [] };
  return { name: by, from: [from], filledBy: `driver ${is}`, cut: { kind: "opening", corner: "bit", region } };
}

/** Pilots as far as they go into a sheet that begins `before` mm behind the face. */
function pilots(piece: PieceId, seat: Seat, sheet: Sheet, before: number): readonly Draft[] {
  const { screws, face, at } = seat;
  const depth = pilotDepth(seat) - before;
  if (screws === undefined || depth <= 0) return [];
  const centre = onSheet(face, sheet, at);
  return screws.points.map((point, index): Draft => {
    const name = `${seat.name}.${index + 1}`;
    return {
      name,
      from: [seat.from],
      axis: axisId(piece, name),
      cut: {
        kind: "hole",
        at: { x: centre.x + point.x, y: centre.y + point.y },
        d: screws.row.pilot,
        depth: depth >= sheet.thickness ? "through" : depth,
      },
    };
  });
}

/** How deep below the face the pilots end, mm: a little deeper than the screws; 0 where those end in a ring. */
function pilotDepth({ screws, lift }: Seat): number {
  return screws === undefined || screws.reach <= lift ? 0 : screws.reach - lift + rules.pilotDeeper.value;
}

/** The axes of a driver's screws, box frame: the ray starts on top of the driver's flange, where the heads lie. */
export function seatAxes(piece: PieceId, seat: Seat): readonly Axis[] {
  const { screws, face, at, lift, driver } = seat;
  const depth = pilotDepth(seat);
  const roles = [
    ...(depth > 0 ? [face.name] : []),
    ...(face.lining !== undefined && depth > face.panel.thickness ? [liningRole(face)] : []),
  ];
  return (screws?.points ?? []).map((point, index) => {
    const name = `${seat.name}.${index + 1}`;
    return {
      id: axisId(piece, name),
      from: [seat.from],
      ray: frameOn(face, { x: at.x + point.x, y: at.y + point.y }, lift + (driver.flange ?? 0)),
      fastener: `${screws!.name} screw`,
      stack: roles.map((role) => {
        const part = partId(piece, role);
        return { part, feature: featureId(part, name), role: "pilot" as const };
      }),
    };
  });
}

/** Where a driver sits, in the vehicle. */
export function mountOf(around: Around, seat: Seat, shape: Shape): Mount {
  const at = compose(shape.stands, frameOn(seat.face, seat.at, seat.lift));
  const found = behind(seat.face, seat.at, shape);
  const air = found && { air: airName(found.chamber, around) };
  return { driver: seat.is, piece: around.id, at, from: [seat.from], ...air };
}
