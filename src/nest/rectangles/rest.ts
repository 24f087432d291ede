/**
 * A rectangle of a sheet that is not cut into yet, mm from the corner of the usable area. One kerf is added to its w and
 * h, as to the sheet and to every tile: with one kerf, cuts from edge to edge then need no further thought of it.
 */
export type Rest = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

/** What a tile takes of a rest along one side: where it begins, counted from the rest's start, and how much is gone. */
export type Span = { readonly before: number; readonly taken: number };

/** How what remains of a rest is parted: by one cut along the sheet's length, or one across it. */
export type Split = "along" | "across";

/** Lengths that differ by less fit: far below what a saw or router can do, far above the noise of adding up a sheet. */
export const noise = 1e-6;

/**
 * Lays a length in a rest along one side.
 *
 * Units:    mm; `size` holds one kerf. `pad` is what the tile wants free beyond the kerf, though not at the sheet's own
 *           edges: `start` at 0, and `end`. `least`: what will do where the whole length of the sheet is free.
 * Returns:  undefined if there is no space for it.
 */
export function spanIn(
  start: number,
  length: number,
  end: number,
  size: number,
  pad: number,
  least: number,
): Span | undefined {
  if (size > length && least <= length + noise)
    return start < noise && start + length > end - noise ? { before: 0, taken: length } : undefined;
  const before = start < noise ? 0 : pad;
  const left = length - before - size;
  if (left < -noise) return undefined;
  if (left >= pad) return { before, taken: Math.min(length, before + size + pad) };
  return start + length > end - noise ? { before, taken: length } : undefined;
}

/** What remains when the lower left corner of a rest is taken, parted by one cut from edge to edge; absent: nothing does. */
export function splitRest(
  rest: Rest,
  w: number,
  h: number,
  split: Split,
): { readonly right?: Rest; readonly above?: Rest } {
  const right = { x: rest.x + w, y: rest.y, w: rest.w - w, h: split === "along" ? h : rest.h };
  const above = { x: rest.x, y: rest.y + h, w: split === "along" ? rest.w : w, h: rest.h - h };
  const remains = (each: Rest) => each.w > noise && each.h > noise;
  return { ...(remains(right) && { right }), ...(remains(above) && { above }) };
}
