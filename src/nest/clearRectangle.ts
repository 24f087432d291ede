/** A rectangle of a sheet, from its lower left corner. Sheet frame, mm. */
export type Rectangle = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };

export type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/**
 * The largest rectangle within `usable` that none of the boxes reaches into; undefined where nothing is left.
 *
 * Method:   the sides of a largest clear rectangle each touch a box or the border: between every two such uprights, the
 *           bands that no box reaches into. Cubic in the boxes, which are few.
 */
export function largestClear(usable: Box, taken: readonly Box[]): Rectangle | undefined {
  const lefts = steps([usable.x0, ...taken.map((box) => box.x1)], usable.x0, usable.x1);
  let best: Rectangle | undefined;
  for (const x0 of lefts) {
    const rights = steps([usable.x1, ...taken.map((box) => box.x0)], x0, usable.x1).filter((x) => x > x0);
    for (const x1 of rights) {
      const inWay = taken.filter((box) => box.x0 < x1 && box.x1 > x0).sort((a, b) => a.y0 - b.y0);
      for (const [y0, y1] of clearBands(inWay, usable.y0, usable.y1))
        if (!best || (x1 - x0) * (y1 - y0) > best.length * best.width)
          best = { x: x0, y: y0, length: x1 - x0, width: y1 - y0 };
    }
  }
  return best;
}

/** The spans between `from` and `to` that none of the boxes covers; the boxes by ascending y0. */
function clearBands(boxes: readonly Box[], from: number, to: number): [number, number][] {
  const bands: [number, number][] = [];
  let low = from;
  for (const box of boxes) {
    if (box.y0 > low) bands.push([low, Math.min(box.y0, to)]);
    low = Math.max(low, box.y1);
  }
  if (low < to) bands.push([low, to]);
  return bands.filter(([y0, y1]) => y1 > y0);
}

const steps = (values: readonly number[], from: number, to: number): number[] =>
  [...new Set(values)].filter((value) => value >= from && value <= to).sort((a, b) => a - b);
