// How many sheets the saw's packing needs for published orders of rectangles, beside what no layout can go below.

import { join } from "node:path";
import { pathToFileURL } from "node:url";

/**
 * Packs every instance of a file: {instances: [{name, sheet: [w, h], rotation, kerf, items: [{w, h, demand}],
 * lowerBound, scratchReference}]}. With `oriented` nothing is turned.
 * Rows: {name, kind: "sheets", sheets, lowerBound, seconds, placements: [{item, sheet, x, y, w, h}]}.
 */
export async function benchRectangles(file, { dist, seconds, seed, oriented, iterations, only }, tell) {
  const load = (module) => import(pathToFileURL(join(dist, "nest", module)).href);
  const { beginRectangles } = await load("rectangles/search.js");
  const { boundOf } = await load("bound.js");
  const rows = [];
  for (const instance of file.instances.filter(({ name }) => only === undefined || name.includes(only))) {
    const order = orderOf(instance, oriented, seed);
    const begun = process.cpuUsage();
    const search = beginRectangles(order);
    const bound = boundOf(order);
    let found = search.advance(1);
    const first = cpuSince(begun);
    const isBest = () => found.result.left.length === 0 && found.result.sheets.length <= bound.count;
    let done = 1;
    while (!isBest() && (iterations === undefined ? cpuSince(begun) < seconds : done < iterations)) {
      found = search.advance(10);
      done += 10;
    }
    const { sheets, left } = found.result;
    const faults = faultsOf(instance, order, found.result);
    const given = oriented ? instance.oriented : instance;
    rows.push({
      name: instance.name,
      kind: "sheets",
      sheets: sheets.length,
      lowerBound: bound.count,
      seconds: cpuSince(begun),
      first,
      iterations: done,
      left: left.length,
      filled: fullest(instance, placementsOf(order, found.result)),
      reference: referenceOf(given),
      known: given?.lowerBound,
      faults,
      placements: placementsOf(order, found.result),
    });
    tell(rows.at(-1));
  }
  return rows;
}

const cpuSince = (begun) => {
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1e6;
};

function referenceOf(given) {
  if (given === undefined) return undefined;
  const { scratchBins, scratchReference } = given;
  return scratchBins ?? (typeof scratchReference === "object" ? scratchReference?.bins : scratchReference) ?? undefined;
}

function orderOf({ sheet: [length, width], items, kerf, rotation }, oriented, seed) {
  const turns = rotation === false || oriented ? [0] : [0, Math.PI / 2];
  const each = items.flatMap((item, index) => Array.from({ length: item.demand ?? 1 }, () => ({ ...item, index })));
  return {
    items: each.map(({ w, h, index }, i) => ({
      id: `${index}.${i}`,
      index,
      shape: { outer: corners(w, h), holes: [] },
      gap: kerf ?? 0,
      turns,
    })),
    stock: [{ name: "sheet", length, width, trim: 0, cost: 1 }],
    edgeToEdge: true,
    seed,
    iterations: 1,
  };
}

function corners(w, h) {
  const at = (x, y) => ({ x, y, bulge: 0, by: "side" });
  return [at(0, 0), at(w, 0), at(w, h), at(0, h)];
}

function placementsOf({ items }, { sheets }) {
  return sheets.flatMap(({ placed }, sheet) =>
    placed.map(({ item, x, y, turn }) => {
      const { x: w, y: h } = items[item].shape.outer[2];
      const turned = Math.abs(Math.sin(turn)) > 0.5;
      return { item: items[item].index, sheet, x, y, w: turned ? h : w, h: turned ? w : h };
    }),
  );
}

/** How much of its fullest sheet is laid. */
function fullest({ sheet: [length, width] }, placements) {
  const laid = new Map();
  for (const { sheet, w, h } of placements) laid.set(sheet, (laid.get(sheet) ?? 0) + w * h);
  return Math.max(0, ...laid.values()) / (length * width);
}

/** What is wrong with a layout: overlaps, kerfs too narrow, off the sheet, no cuts from edge to edge. */
function faultsOf({ sheet: [length, width], kerf = 0 }, order, result) {
  const placed = placementsOf(order, result);
  const faults = [];
  result.sheets.forEach((_, sheet) => {
    const boxes = placed.filter((one) => one.sheet === sheet).map(({ x, y, w, h }) => [x, y, x + w, y + h]);
    if (boxes.some(([x0, y0, x1, y1]) => x0 < -1e-6 || y0 < -1e-6 || x1 > length + 1e-6 || y1 > width + 1e-6))
      faults.push(`sheet ${sheet}: over its edge`);
    if (!comesApart(boxes, kerf ?? 0)) faults.push(`sheet ${sheet}: does not come apart by cuts from edge to edge`);
  });
  const count = placed.length + result.left.length;
  if (count !== order.items.length) faults.push(`${count} of ${order.items.length} items`);
  return faults;
}

/** Cuts from edge to edge that part all boxes, each `kerf` wide; then none overlap either. */
function comesApart(boxes, kerf) {
  if (boxes.length <= 1) return true;
  for (const axis of [0, 1]) {
    const sorted = [...boxes].sort((a, b) => a[axis] - b[axis]);
    let end = Number.NEGATIVE_INFINITY;
    for (const [i, box] of sorted.entries()) {
      if (i > 0 && box[axis] - end >= kerf - 1e-6)
        return comesApart(sorted.slice(0, i), kerf) && comesApart(sorted.slice(i), kerf);
      end = Math.max(end, box[axis + 2]);
    }
  }
  return false;
}

/** A line for each file: sheets, bounds, how often the count is proved, time. */
export function rectanglesLine(name, rows, seconds) {
  const sum = (of) => rows.reduce((total, row) => total + (of(row) ?? 0), 0);
  const proved = rows.filter((row) => row.left === 0 && row.sheets <= row.lowerBound).length;
  const worst = Math.max(...rows.map((row) => row.sheets - (row.reference ?? row.sheets)));
  const filled = sum((row) => row.filled) / rows.length;
  return [
    name.padEnd(22),
    `${sum((row) => row.sheets)} sheets`.padStart(12),
    `bound ${sum((row) => row.lowerBound)} (published ${sum((row) => row.known)})`.padStart(28),
    `reference ${sum((row) => row.reference)}, worst ${worst > 0 ? "+" : ""}${worst}`.padStart(26),
    `proven fewest ${proved} of ${rows.length}`.padStart(24),
    `fullest ${(100 * filled).toFixed(2)} %`.padStart(16),
    `${sum((row) => row.seconds).toFixed(1)} s of ${seconds} each`,
  ].join("  ");
}
