import { extentsOf } from "../geometry/measure.js";
import type { Path, Point, Region } from "../geometry/profile.js";
import { mirroredPath, mirrorRegion, moved, moveRegion, turned, turnRegion } from "../geometry/transform.js";
import type { Placed } from "../model/build.js";
import type { Part } from "../model/part.js";

/** Carries a part's geometry, given in the part's frame seen from the face, to where it lies on the sheet. */
export type ToSheet = {
  readonly point: (p: Point) => Point;
  /** Counter-clockwise in, counter-clockwise out, with the back up too. */
  readonly region: (region: Region) => Region;
  /** Keeps its direction; with the back up its arcs turn the other way. */
  readonly path: (path: Path) => Path;
};

/**
 * The way from a part's frame to its sheet: mirrored (x to -x) if its back is up, turned, then shifted so that the
 * lower left corner of the blank's extents lies at x, y. mm, rad.
 */
export function toSheet(part: Part, { x, y, turn, backUp }: Placed): ToSheet {
  const { min } = extentsOf(layBlank(part.blank, turn, backUp));
  const dx = x - min.x;
  const dy = y - min.y;
  const path = (chain: Path): Path => moved(turned(backUp ? mirroredPath(chain) : chain, turn), dx, dy);
  return {
    path,
    point: (p) => {
      const [at] = path([{ x: p.x, y: p.y, bulge: 0, by: "" }]);
      return { x: at!.x, y: at!.y };
    },
    region: (region) => moveRegion(layBlank(region, turn, backUp), dx, dy),
  };
}

/** A blank mirrored if its back is up, then turned about the part's origin: its shape on the sheet, not its place. */
export function layBlank(blank: Region, turn: number, backUp: boolean): Region {
  return turnRegion(backUp ? mirrorRegion(blank) : blank, turn);
}
