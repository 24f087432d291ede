import type { Profile } from "../../geometry/profile.js";
import { moved, turned } from "../../geometry/transform.js";
import type { NestOrder, NestResultSheet, NestStock } from "../engine.js";
import type { Table } from "./table.js";

/** Clockwise: what is pressed to the left then lies at the sheet's lower edge, where its zero is. */
const quarter = -Math.PI / 2;

/** The same order with sheets and parts turned by a quarter: what lay along lies across. */
export function orderAcross(order: NestOrder): NestOrder {
  return {
    ...order,
    items: order.items.map((item) => ({ ...item, turns: item.turns.map((turn) => turn + quarter) })),
    stock: order.stock.map(stockAcross),
  };
}

function stockAcross(row: NestStock): NestStock {
  const across = (profile: Profile): Profile => moved(turned(profile, quarter), 0, row.length);
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
  const { length } = order.stock[sheet.stock]!;
  const placed = sheet.placed.map(({ item, x, y, turn }) => {
    const { w } = sizes[item]![order.items[item]!.turns.indexOf(turn)]!;
    return { item, x: y, y: length - x - w, turn: turn + quarter };
  });
  return { stock: sheet.stock, placed };
}

/** And back: `across` is the table of the order across, `order` the order itself. */
export function sheetAlong(across: Table, order: NestOrder, sheet: NestResultSheet): NestResultSheet {
  const { length } = order.stock[sheet.stock]!;
  const placed = sheet.placed.map(({ item, x, y, turn }) => {
    const n = across.order.items[item]!.turns.indexOf(turn);
    const { h } = across.sizes[item]![n]!;
    return { item, x: length - y - h, y: x, turn: order.items[item]!.turns[n]! };
  });
  return { stock: sheet.stock, placed };
}
