import { areaOfRegion } from "../geometry/measure.js";
import type { Finding } from "../input/finding.js";
import type { NestedSheet } from "../model/build.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import type { NestItem, NestOrder, NestResult } from "./engine.js";
import { type Group, isBackUp, itemOf, type Member } from "./groups.js";
import { misfitOf } from "./misfit.js";
import { nearMisses } from "./nearMiss.js";
import { overMachine } from "./overMachine.js";
import { cutTroubles, isTooSmallToHold, tooSmallFor, underKerf } from "./saw/findings.js";
import { named } from "./saw/named.js";
import { sawingOf } from "./saw/sawing.js";
import { sheetName } from "./sheetName.js";
import { boardWithoutSheets, shortOf, stockUsedUp } from "./shortage.js";
import type { StockRow } from "./stock.js";
import { worthOf } from "./worth.js";

/** What a search is asked, but for how long. */
export type GroupOrder = Omit<NestOrder, "seed" | "iterations">;

/** A group as it is laid. */
export type GroupNest = {
  readonly group: Group;
  readonly order: GroupOrder;
  readonly sheets: readonly NestedSheet[];
  readonly left: readonly Part[];
  readonly findings: readonly Finding[];
  /** What the search found; absent: it lies as it was accepted. */
  readonly result?: NestResult;
};

/** What layouts of the same group are worth on whatever stock, less is better (worth.ts); the area left over counts first. */
export function groupWorth({ order, left, result }: GroupNest): readonly number[] {
  const [, ...ofSheets] = result === undefined ? [] : worthOf(order)(result);
  return [left.reduce((sum, { blank }) => sum + areaOfRegion(blank), 0), ...ofSheets];
}

/** The items that lie on sheets. */
export const laidItems = ({ order, result }: GroupNest): readonly NestItem[] =>
  order.items.filter((_, i) => !result?.left.includes(i));

/** Lays a group on the stock; the search is left to the caller. `soFar`: sheets whose names are taken. */
export function* nestGroup(
  group: Group,
  rows: readonly StockRow[],
  job: Job,
  shop: Shop,
  soFar: readonly NestedSheet[],
): Generator<GroupOrder, GroupNest, NestResult> {
  const misfits = group.members.map((member) => [
    ...misfitOf(job, shop, member.part, itemOf(member), rows),
    ...(group.byMachine ? [] : underKerf(shop, member.part, itemOf(member))),
  ]);
  const fitting = rows.length === 0 ? [] : group.members.filter((_, i) => misfits[i]!.length === 0);
  const order = orderOf(group, fitting, rows, shop);
  const { sawing } = order;
  const result = fitting.length > 0 ? yield order : { sheets: [], left: [] };
  const sheets = sheetsOf(group, fitting, rows, result, soFar);
  const isSmall = (item: number) => sawing !== undefined && isTooSmallToHold(order.items[item]!, rows, sawing);
  const small = result.left.filter(isSmall).map((item) => fitting[item]!.part);
  const unlaid = result.left.filter((item) => !isSmall(item)).map((item) => fitting[item]!.part);
  const left = group.members.map(({ part }) => part).filter((part) => !sheets.some((sheet) => holds(sheet, part)));
  const parts = fitting.map(({ part }) => part);
  const findings = [
    ...misfits.flat(),
    ...(rows.length === 0 ? [shortOf(boardWithoutSheets, job, group.board, left)] : []),
    ...(small.length > 0 ? [tooSmallFor(shop, small)] : []),
    ...cutTroubles(job, shop, sheets, parts),
    ...(unlaid.length > 0 ? [shortOf(stockUsedUp, job, group.board, unlaid)] : []),
    ...nearMisses(job, { items: order.items, parts, rows }, result),
    ...(group.byMachine ? sheets.flatMap((sheet) => overMachine(job, sheet, shop.cnc)) : []),
  ];
  return { group, order, sheets, left, findings, result };
}

/** A group as it was accepted; what its sheets ask of the machine and the saw is told anew. */
export function keptGroup(
  group: Group,
  rows: readonly StockRow[],
  sheets: readonly NestedSheet[],
  job: Job,
  shop: Shop,
): GroupNest {
  const parts = group.members.map(({ part }) => part);
  const findings = group.byMachine
    ? sheets.flatMap((sheet) => overMachine(job, sheet, shop.cnc))
    : cutTroubles(job, shop, sheets, parts);
  return { group, order: orderOf(group, group.members, rows, shop), sheets, left: [], findings };
}

function orderOf({ byMachine }: Group, members: readonly Member[], stock: readonly StockRow[], shop: Shop): GroupOrder {
  const sawing = byMachine ? undefined : sawingOf(shop);
  return { items: members.map(itemOf), stock, edgeToEdge: !byMachine, ...(sawing && { sawing }) };
}

function sheetsOf(
  group: Group,
  members: readonly Member[],
  rows: readonly StockRow[],
  result: NestResult,
  soFar: readonly NestedSheet[],
): NestedSheet[] {
  const sheets: NestedSheet[] = [];
  for (const { stock, placed, sawn } of result.sheets) {
    const row = rows[stock]!;
    sheets.push({
      sheet: sheetName(group.board, row, [...soFar, ...sheets]),
      board: group.board,
      length: row.length,
      width: row.width,
      trim: row.trim,
      ...(row.offcut !== undefined && { offcut: row.offcut }),
      ...(row.onHand && { onHand: true as const }),
      ...(row.restOf && { restOf: row.restOf }),
      ...(row.measured !== undefined && { measured: row.measured }),
      ...(row.outline && { outline: row.outline }),
      ...(row.zones && { zones: row.zones }),
      ...(row.within && { within: row.within }),
      ...(!row.onHand && row.price !== undefined && { price: row.price }),
      placed: placed.map(({ item, x, y, turn }) => {
        const { part, process } = members[item]!;
        return { part: part.id, x, y, turn, backUp: isBackUp(process) };
      }),
      ...(sawn && { sawn: named(sawn, (item) => members[item]!.part.id) }),
    });
  }
  return sheets;
}

const holds = (sheet: NestedSheet, part: Part) => sheet.placed.some((placed) => placed.part === part.id);
