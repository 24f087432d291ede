import { eachEdge, extentsOf } from "../geometry/measure.js";
import type { Extents } from "../geometry/profile.js";
import type { Part } from "../model/part.js";

/** A part's extents with its coverings on: every wrapped edge stands out by the covering's thickness as laid, mm. */
export function finishedExtents(part: Part): Extents {
  let box = extentsOf(part.profile);
  eachEdge(part.profile.outer, (a, b) => {
    const finish = part.edges[a.by]?.finish;
    if (finish?.kind === "wrapped") box = around(box, grown(extentsOf([a, { ...b, bulge: 0 }]), finish.loose));
  });
  return box;
}

function grown({ min, max }: Extents, by: number): Extents {
  return { min: { x: min.x - by, y: min.y - by }, max: { x: max.x + by, y: max.y + by } };
}

function around(a: Extents, b: Extents): Extents {
  return {
    min: { x: Math.min(a.min.x, b.min.x), y: Math.min(a.min.y, b.min.y) },
    max: { x: Math.max(a.max.x, b.max.x), y: Math.max(a.max.y, b.max.y) },
  };
}
