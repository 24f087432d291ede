import type { Finding, FindingDef, Outcome } from "../input/finding.js";
import type { AcceptedLayout } from "../model/accepted.js";
import type { Layout, NestedSheet, Plan, Process } from "../model/build.js";
import { hashOf } from "../model/hash.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { acceptedFor, acceptedLayoutStale } from "./accepted.js";
import { type Bound, boundOf } from "./bound.js";
import type { NestOrder, NestResult } from "./engine.js";
import { type Group, groupsOf, isBackUp, itemOf, type Member } from "./groups.js";
import { misfitOf, partOverSheet } from "./misfit.js";
import { nearMiss, nearMisses } from "./nearMiss.js";
import { overMachine, sheetOverMachine } from "./overMachine.js";
import { bevelsTogether } from "./saw/bevelsTogether.js";
import { bevelTroubles, cutTroubles, isTooSmallToHold, sawFindings, tooSmallFor, underKerf } from "./saw/findings.js";
import { named } from "./saw/named.js";
import { ripListOf } from "./saw/ripList.js";
import { sawingOf } from "./saw/sawing.js";
import { searchHere } from "./search.js";
import { sheetName } from "./sheetName.js";
import { boardWithoutSheets, shortOf, stockUsedUp } from "./shortage.js";
import type { StockRow } from "./stock.js";
import { stockFindings, stockFor } from "./stockFor.js";

export const nestFindings: readonly FindingDef[] = [
  partOverSheet,
  boardWithoutSheets,
  stockUsedUp,
  sheetOverMachine,
  acceptedLayoutStale,
  nearMiss,
  ...stockFindings,
  ...sawFindings,
];

export type NestOptions = {
  readonly seed: number;
  readonly iterations: number;
  /** Boards whose parts are as they were when it was accepted lie as it says. */
  readonly accepted?: AcceptedLayout | undefined;
};

/** One search of several: the order, but for how long it is searched, and whose it is. */
export type NestTask = {
  readonly order: Omit<NestOrder, "seed" | "iterations">;
  readonly board: BoardId;
  readonly byMachine: boolean;
  /** The how manieth of how many. */
  readonly nth: number;
  readonly of: number;
};

/**
 * Lays every part on a sheet of its own board. What is cut by machine and what is cut by saw or by hand lie on sheets of
 * their own: a sawn sheet is taken apart by cuts from edge to edge, and a part cut by hand is first sawn free.
 *
 * Returns: what could be laid; parts that could not are in `left`, each with a finding.
 */
export function nestParts(job: Job, shop: Shop, plan: Plan, process: Process, options: NestOptions): Outcome<Layout> {
  const { seed, iterations, accepted } = options;
  const tasks = nesting(job, shop, plan, process, accepted);
  let step = tasks.next();
  while (!step.done) step = tasks.next(searchHere({ ...step.value.order, seed, iterations }));
  return step.value;
}

/** The same, with every search left to the caller: it takes the result of each task that it yields. */
export function* nesting(
  job: Job,
  shop: Shop,
  plan: Plan,
  process: Process,
  accepted: AcceptedLayout | undefined,
): Generator<NestTask, Outcome<Layout>, NestResult> {
  const groups = groupsOf(plan, process).map((group) => ({ group, kept: acceptedFor(job, group, accepted) }));
  const nests: GroupNest[] = [];
  const toSearch = groups.filter(({ kept }) => kept.sheets === undefined).length;
  const keptSheets = groups.flatMap(({ kept }) => kept.sheets ?? []);
  let nth = 0;
  for (const { group, kept } of groups) {
    const soFar = [...keptSheets, ...nests.filter((nest) => !nest.kept).flatMap((nest) => nest.sheets)];
    const { rows, findings: ofStock } = stockFor(job, shop, group, process, soFar);
    if (kept.sheets !== undefined) nests.push(keptGroup(group, rows, kept.sheets, job, shop));
    else {
      const nest = yield* nestGroup(group, rows, job, shop, soFar, { nth: nth++, of: toSearch });
      nests.push({ ...nest, findings: [...kept.findings, ...ofStock, ...nest.findings] });
    }
  }
  const sawing = sawingOf(shop);
  const laid = nests.flatMap((nest) => nest.sheets);
  const sheets = bevelsTogether(laid, plan.built.parts, process, sawing);
  const rips = ripListOf(sheets, plan.built.parts, process, sawing);
  return {
    value: {
      of: hashOf(nests.map((nest) => nest.order)),
      sheets,
      left: nests.flatMap((nest) => nest.left.map((part) => part.id)),
      bounds: boundsByBoard(nests),
      ...(rips && { rips }),
    },
    findings: [...nests.flatMap((nest) => nest.findings), ...bevelTroubles(shop, plan.built.parts, rips)],
  };
}

type GroupNest = {
  readonly group: Group;
  readonly order: Omit<NestOrder, "seed" | "iterations">;
  readonly sheets: readonly NestedSheet[];
  readonly left: readonly Part[];
  readonly bound: Bound;
  readonly findings: readonly Finding[];
  /** As it was accepted. */
  readonly kept: boolean;
};

function* nestGroup(
  group: Group,
  rows: readonly StockRow[],
  job: Job,
  shop: Shop,
  soFar: readonly NestedSheet[],
  place: Pick<NestTask, "nth" | "of">,
): Generator<NestTask, GroupNest, NestResult> {
  const misfits = group.members.map((member) => [
    ...misfitOf(job, shop, member.part, itemOf(member), rows),
    ...(group.byMachine ? [] : underKerf(shop, member.part, itemOf(member))),
  ]);
  const fitting = rows.length === 0 ? [] : group.members.filter((_, i) => misfits[i]!.length === 0);
  const order = orderOf(group, fitting, rows, shop);
  const { sawing } = order;
  const { board, byMachine } = group;
  const result = fitting.length > 0 ? yield { order, board, byMachine, ...place } : { sheets: [], left: [] };
  const sheets = sheetsOf(group, fitting, rows, result, soFar);
  const isSmall = (item: number) => sawing !== undefined && isTooSmallToHold(order.items[item]!, rows, sawing);
  const small = result.left.filter(isSmall).map((item) => fitting[item]!.part);
  const unlaid = result.left.filter((item) => !isSmall(item)).map((item) => fitting[item]!.part);
  const left = group.members.map(({ part }) => part).filter((part) => !sheets.some((sheet) => holds(sheet, part)));
  const findings = [
    ...misfits.flat(),
    ...(rows.length === 0 ? [shortOf(boardWithoutSheets, job, group.board, left)] : []),
    ...(small.length > 0 ? [tooSmallFor(shop, small)] : []),
    ...cutTroubles(
      job,
      shop,
      sheets,
      fitting.map(({ part }) => part),
    ),
    ...(unlaid.length > 0 ? [shortOf(stockUsedUp, job, group.board, unlaid)] : []),
    ...nearMisses(job, { items: order.items, parts: fitting.map(({ part }) => part), rows }, result),
    ...(group.byMachine ? sheets.flatMap((sheet) => overMachine(job, sheet, shop.cnc)) : []),
  ];
  const laid = order.items.filter((_, i) => !result.left.includes(i));
  const bound = boundOf({ ...order, items: laid });
  return { group, order, sheets, left, bound, findings, kept: false };
}

function orderOf(
  { byMachine }: Group,
  members: readonly Member[],
  stock: readonly StockRow[],
  shop: Shop,
): NestTask["order"] {
  const sawing = byMachine ? undefined : sawingOf(shop);
  return { items: members.map(itemOf), stock, edgeToEdge: !byMachine, ...(sawing && { sawing }) };
}

/** A group as it was accepted; what its sheets ask of the machine and the saw is told anew. */
function keptGroup(
  group: Group,
  rows: readonly StockRow[],
  sheets: readonly NestedSheet[],
  job: Job,
  shop: Shop,
): GroupNest {
  const order = orderOf(group, group.members, rows, shop);
  const parts = group.members.map(({ part }) => part);
  return {
    group,
    order,
    sheets,
    left: [],
    bound: boundOf(order),
    findings: group.byMachine
      ? sheets.flatMap((sheet) => overMachine(job, sheet, shop.cnc))
      : cutTroubles(job, shop, sheets, parts),
    kept: true,
  };
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

function boundsByBoard(nests: readonly GroupNest[]): Layout["bounds"] {
  const boards = [...new Set(nests.map((nest) => nest.group.board))];
  return boards.map((board) => {
    const own = nests.filter((nest) => nest.group.board === board).map((nest) => nest.bound);
    const whys = own.filter((bound) => bound.count > 0).map((bound) => bound.why);
    return {
      board,
      count: own.reduce((sum, bound) => sum + bound.count, 0),
      why: [...new Set(whys.length > 0 ? whys : own.map((bound) => bound.why))].join("; "),
    };
  });
}
