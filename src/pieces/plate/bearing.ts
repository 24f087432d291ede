import { compose, type Frame, turn } from "../../geometry/frame.js";
import type { Region } from "../../geometry/profile.js";
import { moveRegion, turnRegion } from "../../geometry/transform.js";
import { pieceId } from "../../model/ids.js";
import type { Around, Offer } from "../../model/piece.js";

/** The top of a piece that a plate lies on or is bolted to, in plan. */
export type Bearing = { readonly z: number; readonly outline: Region };

/** The top of a piece, if it offers one that is level. */
export function bearingOf(piece: string, { offers }: Around): Bearing | undefined {
  const offer = offers.get(pieceId(piece));
  const plane = offer && topOf(offer);
  const outline = offer?.outlines["top"];
  if (plane === undefined || outline === undefined) return undefined;
  const x = turn(plane.quat, [1, 0, 0]);
  const angle = Math.atan2(x[1], x[0]);
  return { z: plane.origin[2], outline: moveRegion(turnRegion(outline, angle), plane.origin[0], plane.origin[1]) };
}

function topOf(offer: Offer): Frame | undefined {
  const plane = offer.planes["top"];
  if (plane === undefined || offer.stands === undefined) return undefined;
  const inVehicle = compose(offer.stands, plane);
  return turn(inVehicle.quat, [0, 0, 1])[2] > 1 - 1e-9 ? inVehicle : undefined;
}
