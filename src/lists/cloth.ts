import { eachEdge, extentsOf } from "../geometry/measure.js";
import type { Extents } from "../geometry/profile.js";
import type { Part } from "../model/part.js";

/** A rectangle of covering for one part, mm: it goes over the face or back, round the wrapped edges and behind them. */
export type Cloth = { readonly covering: string; readonly length: number; readonly width: number };

/**
 * The coverings of a part. Cut out as the bare outline grown by the board's thickness and the wrap on each wrapped edge
 * (common practice, no source).
 */
export function clothsOf(part: Part): readonly Cloth[] {
  const names = [part.coverings.face, part.coverings.back].filter((name) => name !== undefined);
  return names.map((covering) => {
    const { min, max } = clothExtents(part, covering);
    return { covering, length: max.x - min.x, width: max.y - min.y };
  });
}

function clothExtents(part: Part, covering: string): Extents {
  let box = extentsOf(part.profile);
  eachEdge(part.profile.outer, (a, b) => {
    const finish = part.edges[a.by]?.finish;
    if (finish?.kind !== "wrapped" || finish.covering !== covering) return;
    const edge = extentsOf([a, { ...b, bulge: 0 }]);
    const more = part.thickness + finish.wrap;
    box = {
      min: { x: Math.min(box.min.x, edge.min.x - more), y: Math.min(box.min.y, edge.min.y - more) },
      max: { x: Math.max(box.max.x, edge.max.x + more), y: Math.max(box.max.y, edge.max.y + more) },
    };
  });
  return box;
}

/** How much of a roll some cloths take, mm. `seams`: how many are wider than the roll whichever way they are laid. */
export type RollLength = { readonly length: number; readonly seams: number };

/**
 * Cloths laid in rows across the roll, the longest first, each in the first row with room (first fit by decreasing
 * height; Coffman, Garey, Johnson and Tarjan, "Performance bounds for level-oriented two-dimensional packing algorithms",
 * SIAM J. Computing 9, 1980; from memory). Cloths may be turned a quarter: no direction of the pile is kept.
 */
export function rollLength(cloths: readonly Cloth[], rollWidth: number): RollLength {
  const laid = cloths.map((cloth) => lieOnRoll(cloth, rollWidth)).sort((a, b) => b.along - a.along);
  const rows: { readonly along: number; left: number }[] = [];
  for (const { along, across } of laid) {
    const row = rows.find(({ left }) => left >= across);
    if (row) row.left -= across;
    else rows.push({ along, left: rollWidth - across });
  }
  return {
    length: rows.reduce((sum, { along }) => sum + along, 0),
    seams: cloths.filter(({ length, width }) => Math.min(length, width) > rollWidth).length,
  };
}

/** The longer side across the roll where it fits; wider than the roll, as many lengths side by side as it takes. */
function lieOnRoll({ length, width }: Cloth, rollWidth: number): { readonly along: number; readonly across: number } {
  const [short, long] = length < width ? [length, width] : [width, length];
  if (long <= rollWidth) return { along: short, across: long };
  if (short <= rollWidth) return { along: long, across: short };
  return { along: long * Math.ceil(short / rollWidth), across: rollWidth };
}
