import type { NestResult } from "../engine.js";
import { collide } from "./collide.js";
import { cover, emptyRaster, firstClear, type Ground, groundOf, occupy, type Stamp, stampOf } from "./raster.js";
import { roomOf } from "./room.js";
import { type IsClear, settled } from "./settle.js";
import type { Shape } from "./shape.js";
import type { Table } from "./table.js";

/**
 * A first layout by true shapes: one part after another, the largest first, on the first sheet in use that has a place,
 * as far left there as it goes; a sheet more where none has.
 *
 * Method:   places are looked for on a grid of cells, a bit each, in which a part marks every cell that it reaches into;
 *           from there it is slid left and down by ever smaller steps, as the edges allow. Holes and notches are cells
 *           like others. Bottom-left placing on a grid: common practice, no source.
 */
export function firstFit(table: Table): NestResult {
  const { order } = table;
  const cell = cellOf(table);
  const stamps = new Map<number, Stamp>();
  const stampFor = (shape: Shape): Stamp => {
    const stamp = stamps.get(shape.number) ?? stampOf(shape, cell);
    stamps.set(shape.number, stamp);
    return stamp;
  };
  const sheets: Open[] = [];
  const left: number[] = [];
  for (const item of largestFirst(table)) {
    const turns = table.turns[item]!;
    let spot: Spot | undefined;
    for (const sheet of sheets) {
      spot = spotOn(sheet, turns, stampFor);
      if (spot !== undefined) break;
    }
    for (let row = 0; row < order.stock.length && spot === undefined; row++) {
      const count = order.stock[row]!.count ?? Number.POSITIVE_INFINITY;
      if (sheets.filter((sheet) => sheet.stock === row).length >= count) continue;
      const fresh = openSheet(table, row, cell);
      spot = spotOn(fresh, turns, stampFor);
      if (spot !== undefined) sheets.push(fresh);
    }
    if (spot === undefined) left.push(item);
    else lay(spot, item);
  }
  return {
    sheets: sheets.map((sheet) => ({ stock: sheet.stock, placed: sheet.laid.map((one) => placedOf(table, one)) })),
    left,
  };
}

/** Cells of the largest sheet: finer cells lose less, but take longer. */
const cells = 40_000;

const cellOf = ({ usable }: Table): number => Math.sqrt(Math.max(1, ...usable) / cells);

const largestFirst = ({ areas, turns }: Table): number[] =>
  [...areas.keys()].sort((a, b) => turns[b]![0]!.bulk - turns[a]![0]!.bulk || areas[b]! - areas[a]! || a - b);

type OnGround = {
  readonly item: number;
  readonly turn: number;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
};

type Open = {
  readonly stock: number;
  readonly ground: Ground;
  /** The grid's corner, and the far corner of the room. */
  readonly room: readonly [x0: number, y0: number, x1: number, y1: number];
  readonly fixed: readonly Shape[];
  readonly laid: OnGround[];
  /** The first column that may have a place for a shape: it only moves on, since nothing is ever taken off. */
  readonly from: Map<number, number>;
};

type Spot = {
  readonly sheet: Open;
  readonly turn: number;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
};

function openSheet({ half, obstacles, order }: Table, stock: number, cell: number): Open {
  const room = roomOf(order.stock[stock]!, half);
  const raster = emptyRaster(room[2] - room[0], room[3] - room[1], cell);
  const fixed = obstacles[stock]!;
  for (const shape of fixed) cover(raster, shape, -room[0], -room[1]);
  return { stock, ground: groundOf(raster), room, fixed, laid: [], from: new Map() };
}

/** The place whose far end lies farthest left, of those in each turn. */
function spotOn(sheet: Open, turns: readonly Shape[], stampFor: (shape: Shape) => Stamp): Spot | undefined {
  let best: Spot | undefined;
  const [x0, y0, x1, y1] = sheet.room;
  const { cell } = sheet.ground.raster;
  for (const [turn, shape] of turns.entries()) {
    const limit = best === undefined ? x1 : best.x + best.shape.x1;
    const across = Math.floor((limit - x0 - (shape.x1 - shape.x0)) / cell + 1e-9);
    const up = Math.floor((y1 - y0 - (shape.y1 - shape.y0)) / cell + 1e-9);
    const node = firstClear(sheet.ground, stampFor(shape), across, up, sheet.from.get(shape.number) ?? 0);
    if (node === undefined) {
      if (best === undefined) sheet.from.set(shape.number, Math.max(0, across + 1));
      continue;
    }
    sheet.from.set(shape.number, node.i);
    const spot = { sheet, turn, shape, x: x0 + node.i * cell - shape.x0, y: y0 + node.j * cell - shape.y0 };
    if (best === undefined || spot.x + shape.x1 < best.x + best.shape.x1) best = spot;
  }
  return best;
}

function lay(spot: Spot, item: number): void {
  const { sheet, shape, turn } = spot;
  const { ground, room } = sheet;
  const { x, y } = settled(shape, spot, [room[0], room[1]], ground.raster.cell, isClearOn(sheet, shape));
  sheet.laid.push({ item, turn, shape, x, y });
  occupy(ground, shape, x - room[0], y - room[1]);
}

function isClearOn({ laid, fixed }: Open, shape: Shape): IsClear {
  return (x, y) =>
    !laid.some((one) => collide(shape, one.shape, one.x - x, one.y - y)) &&
    !fixed.some((one) => collide(shape, one, -x, -y));
}

function placedOf({ corners, order }: Table, { item, turn, x, y }: OnGround) {
  const corner = corners[item]![turn]!;
  return { item, x: x + corner.x, y: y + corner.y, turn: order.items[item]!.turns[turn]! };
}
