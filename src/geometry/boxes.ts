/**
 * Axis-parallel boxes in a packed tree, so that the pairs that may touch are found in about n log n.
 *
 * 1. Sort the boxes along a Hilbert curve through their centres, so that neighbours in the list are neighbours in the
 *    plane.
 * 2. Pack eight boxes into one node, eight nodes into the next, up to one root.
 * 3. A search walks down only where the box asked for overlaps.
 *
 * Source: I. Kamel and C. Faloutsos, "Hilbert R-tree", VLDB 1994 (packed form); from memory.
 */
export type BoxIndex = { readonly boxes: Float64Array; readonly ids: Uint32Array; readonly levels: readonly number[] };

const width = 8;

/** `boxes` holds x0, y0, x1, y1 for each; box i is answered as i. */
export function indexBoxes(boxes: Float64Array): BoxIndex {
  const n = boxes.length / 4;
  const order = hilbertOrder(boxes, n);
  const levels = levelsFor(n);
  const total = levels[levels.length - 1] ?? 0;
  const packed = new Float64Array(total * 4);
  for (let i = 0; i < n; i++) packed.set(boxes.subarray(order[i]! * 4, order[i]! * 4 + 4), i * 4);
  let from = 0;
  for (let level = 0; level + 1 < levels.length; level++) {
    const end = levels[level]!;
    let at = end;
    for (let i = from; i < end; i += width) packNode(packed, i, Math.min(i + width, end), at++);
    from = end;
  }
  return { boxes: packed, ids: order, levels };
}

/** Calls back with every box that overlaps or touches the one asked for. */
export function searchBoxes(
  index: BoxIndex,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  visit: (id: number) => void,
): void {
  const { boxes, ids, levels } = index;
  const n = levels[0] ?? 0;
  const overlaps = (node: number) =>
    boxes[node * 4]! <= x1 && boxes[node * 4 + 1]! <= y1 && boxes[node * 4 + 2]! >= x0 && boxes[node * 4 + 3]! >= y0;
  const walk = (node: number, level: number) => {
    const below = level > 1 ? levels[level - 2]! : 0;
    const first = below + (node - levels[level - 1]!) * width;
    const end = Math.min(first + width, levels[level - 1]!);
    for (let child = first; child < end; child++) {
      if (!overlaps(child)) continue;
      if (level === 1) visit(ids[child]!);
      else walk(child, level - 1);
    }
  };
  if (n === 1 && overlaps(0)) visit(ids[0]!);
  if (n > 1) walk(levels[levels.length - 1]! - 1, levels.length - 1);
}

/** Where each level ends in the packed list, the boxes themselves first. */
function levelsFor(n: number): number[] {
  const levels: number[] = [];
  let end = 0;
  for (let count = n; count > 0; count = count === 1 ? 0 : Math.ceil(count / width)) {
    end += count;
    levels.push(end);
  }
  return levels;
}

function packNode(boxes: Float64Array, from: number, end: number, node: number): void {
  let x0 = Number.POSITIVE_INFINITY;
  let y0 = Number.POSITIVE_INFINITY;
  let x1 = Number.NEGATIVE_INFINITY;
  let y1 = Number.NEGATIVE_INFINITY;
  for (let i = from; i < end; i++) {
    x0 = Math.min(x0, boxes[i * 4]!);
    y0 = Math.min(y0, boxes[i * 4 + 1]!);
    x1 = Math.max(x1, boxes[i * 4 + 2]!);
    y1 = Math.max(y1, boxes[i * 4 + 3]!);
  }
  boxes[node * 4] = x0;
  boxes[node * 4 + 1] = y0;
  boxes[node * 4 + 2] = x1;
  boxes[node * 4 + 3] = y1;
}

/** The key and the number of the box share one double (24 and 28 bits), so that the plain numeric sort orders them. */
function hilbertOrder(boxes: Float64Array, n: number): Uint32Array {
  const all = new Float64Array(4);
  if (n > 0) {
    all.set([Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]);
  }
  for (let i = 0; i < n; i++) {
    all[0] = Math.min(all[0]!, boxes[i * 4]!);
    all[1] = Math.min(all[1]!, boxes[i * 4 + 1]!);
    all[2] = Math.max(all[2]!, boxes[i * 4 + 2]!);
    all[3] = Math.max(all[3]!, boxes[i * 4 + 3]!);
  }
  const side = Math.max(all[2]! - all[0]!, all[3]! - all[1]!) || 1;
  const keys = new Float64Array(n);
  const room = 2 ** 28;
  for (let i = 0; i < n; i++) {
    const x = (((boxes[i * 4]! + boxes[i * 4 + 2]!) / 2 - all[0]!) / side) * 4095;
    const y = (((boxes[i * 4 + 1]! + boxes[i * 4 + 3]!) / 2 - all[1]!) / side) * 4095;
    keys[i] = hilbertKey(x | 0, y | 0) * room + i;
  }
  keys.sort();
  return Uint32Array.from(keys, (key) => key % room);
}

/** How far along the Hilbert curve a cell of a 4096 x 4096 grid lies (textbook form, from memory). */
function hilbertKey(cx: number, cy: number): number {
  let x = cx;
  let y = cy;
  let key = 0;
  for (let s = 2048; s > 0; s >>= 1) {
    const rx = x & s ? 1 : 0;
    const ry = y & s ? 1 : 0;
    key = key * 4 + ((3 * rx) ^ ry);
    if (ry === 0) {
      if (rx === 1) {
        x = 4095 - x;
        y = 4095 - y;
      }
      const t = x;
      x = y;
      y = t;
    }
  }
  return key;
}
