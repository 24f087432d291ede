import { extentsOf } from "../geometry/measure.js";
import type { Extents, Path, Point } from "../geometry/profile.js";
import type { Part } from "../model/part.js";
import type { Bend } from "./page.js";

export type SeenFrom = "face" | "back";

/**
 * How a part lies on the page. From the back the part is turned over about its upright middle, so left and right change
 * places. `shift`: where the part's origin comes to lie, mm of paper. `scale`: mm of paper for 1 mm.
 */
export type View = { readonly from: SeenFrom; readonly scale: number; readonly shift: Point };

/** What a part takes up in its own frame: its finished outline and, where there is more of it, its blank. */
export function partExtents(part: Part): Extents {
  const a = extentsOf(part.profile.outer);
  const b = extentsOf(part.blank.outer);
  return {
    min: { x: Math.min(a.min.x, b.min.x), y: Math.min(a.min.y, b.min.y) },
    max: { x: Math.max(a.max.x, b.max.x), y: Math.max(a.max.y, b.max.y) },
  };
}

/** The view whose middle lies at `middle` of the page. */
export function viewAt(part: Part, from: SeenFrom, scale: number, middle: Point): View {
  const { min, max } = partExtents(part);
  const flip = from === "back" ? -1 : 1;
  return {
    from,
    scale,
    shift: {
      x: middle.x - (scale * flip * (min.x + max.x)) / 2,
      y: middle.y - (scale * (min.y + max.y)) / 2,
    },
  };
}

export function toPaper(view: View, p: Point): Point {
  const flip = view.from === "back" ? -1 : 1;
  return { x: view.shift.x + view.scale * flip * p.x, y: view.shift.y + view.scale * p.y };
}

/** The same chain on paper; seen from the back its arcs turn the other way. */
export function pathToPaper(view: View, path: Path): readonly Bend[] {
  return path.map((v) => ({ ...toPaper(view, v), bulge: view.from === "back" ? 0 - v.bulge : v.bulge }));
}

/** Real mm box to paper box. */
export function boxToPaper(view: View, box: Extents): Extents {
  const a = toPaper(view, box.min);
  const b = toPaper(view, box.max);
  return { min: { x: Math.min(a.x, b.x), y: a.y }, max: { x: Math.max(a.x, b.x), y: b.y } };
}
