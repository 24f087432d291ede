import { compose, place } from "../../geometry/frame.js";
import { extentsOf } from "../../geometry/measure.js";
import type { Point, Region } from "../../geometry/profile.js";
import { circle } from "../../geometry/shapes.js";
import { pieceId } from "../../model/ids.js";
import type { Around } from "../../model/piece.js";
import { snap, stepOf } from "../common/method.js";
import { addedAt, type PlateCovering } from "./covering.js";
import type { PlateSpec } from "./schema.js";

export const openingName = "opening.driver";

export type Opening = {
  readonly region: Region;
  readonly centre: Point;
  readonly radius: number;
  readonly reveal: number;
};

/**
 * The round opening over a driver, or over the ring round it, as cut: the thing's own outline, the reveal, and the
 * covering on the opening's edge.
 *
 * Returns: undefined where the plate opens over nothing, or over what is not there.
 */
export function openingOf(spec: PlateSpec, covering: PlateCovering | undefined, around: Around): Opening | undefined {
  const seen = spec["open over"] && (ringSeen(spec, around) ?? driverSeen(spec, around));
  if (seen === undefined) return undefined;
  const reveal = spec["open over"]?.gap ?? covering?.reveal ?? 1;
  const radius = seen.radius + reveal + addedAt(openingName, covering);
  const cut = snap(2 * radius, stepOf(spec, around)) / 2;
  return {
    centre: seen.centre,
    radius: cut,
    reveal,
    region: { outer: circle(seen.centre, cut, openingName), holes: [] },
  };
}

type Seen = { readonly centre: Point; readonly radius: number };

function ringSeen(spec: PlateSpec, { offers }: Around): Seen | undefined {
  const ring = spec["open over"]?.ring;
  const offer = ring === undefined ? undefined : offers.get(pieceId(ring));
  const trim = offer?.outlines["trim"];
  if (offer?.stands === undefined || trim === undefined) return undefined;
  const { min, max } = extentsOf(trim.outer);
  const [x, y] = place(offer.stands, [(min.x + max.x) / 2, (min.y + max.y) / 2, 0]);
  return { centre: { x, y }, radius: (max.x - min.x) / 2 };
}

function driverSeen(spec: PlateSpec, { offers, job }: Around): Seen | undefined {
  const host = spec["open over"]?.driver;
  const offer = host === undefined ? undefined : offers.get(pieceId(host));
  const driver = offer?.drivers["driver"];
  const sheet = driver && job.drivers[driver.is];
  if (offer?.stands === undefined || driver === undefined || sheet === undefined) return undefined;
  const [x, y] = compose(offer.stands, driver.at).origin;
  return { centre: { x, y }, radius: (sheet.frame ?? sheet["cut-out"]) / 2 };
}
