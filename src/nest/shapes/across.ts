import type { Profile } from "../../geometry/profile.js";
import { moved, turned } from "../../geometry/transform.js";
import type { NestOrder, NestResultSheet, NestStock } from "../engine.js";
import type { Table } from "./table.js";

const quarter = Math.PI / 2;

/** The same order with sheets and parts turned by a quarter, counter-clockwise: what lay along lies across. */
export function orderAcross(order: NestOrder): NestOrder {
  return {
    ...order,
    items: order.items.map((item) => ({ ...item, turns: item.turns.map((turn) => turn + quarter) })),
    stock: order.stock.map(stockAcross),
  };
}

function stockAcross(row: NestStock): NestStock {
  const across = (profile: Profile): Profile => moved(turned(profile, quarter), row.width, 0);
  return {
    ...row,
    length: row.width,
    width: row.length,
    ...(row.outline && { outline: across(row.outline) }),
    ...(row.zones && { zones: row.zones.map(across) }),
  };
}

/** A sheet of the order, its parts as they lie in the order across. */
export function sheetAcross({ order, sizes }: Table, sheet: NestResultSheet): NestResultSheet {
  const { width } = order.stock[sheet.stock]!;
  const placed = sheet.placed.map(({ item, x, y, turn }) => {
    const { h } = sizes[item]![order.items[item]!.turns.indexOf(turn)]!;
    return { item, x: width - y - h, y: x, turn: turn + quarter };
  });
  return { stock: sheet.stock, placed };
}

/** And back: `across` is the table of the order across, `order` the order itself. */
export function sheetAlong(across: Table, order: NestOrder, sheet: NestResultSheet): NestResultSheet {
  const { width } = order.stock[sheet.stock]!;
  const placed = sheet.placed.map(({ item, x, y, turn }) => {
    const n = across.order.items[item]!.turns.indexOf(turn);
    const { w } = across.sizes[item]![n]!;
    return { item, x: y, y: width - x - w, turn: order.items[item]!.turns[n]! };
  });
  return { stock: sheet.stock, placed };
}
