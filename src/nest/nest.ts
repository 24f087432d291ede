import type { FindingDef, Outcome } from "../input/finding.js";
import type { AcceptedLayout } from "../model/accepted.js";
import type { Layout, NestedSheet, Plan, Process } from "../model/build.js";
import { hashOf } from "../model/hash.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Shop } from "../model/shop.js";
import { acceptedFor, acceptedLayoutStale } from "./accepted.js";
import { boundsByBoard } from "./boardBounds.js";
import { boundOf } from "./bound.js";
import { isBetter, type NestResult } from "./engine.js";
import { type GroupNest, type GroupOrder, groupWorth, keptGroup, laidItems, nestGroup } from "./groupNest.js";
import { type Group, groupsOf } from "./groups.js";
import { partOverSheet } from "./misfit.js";
import { nearMiss } from "./nearMiss.js";
import { sheetOverMachine } from "./overMachine.js";
import { handedOn, restRows } from "./rests.js";
import { bevelsTogether } from "./saw/bevelsTogether.js";
import { bevelTroubles, sawFindings } from "./saw/findings.js";
import { ripListOf } from "./saw/ripList.js";
import { sawingOf } from "./saw/sawing.js";
import { searchHere } from "./search.js";
import { boardWithoutSheets, stockUsedUp } from "./shortage.js";
import { rowsFor, type StockRow } from "./stock.js";
import { stockFindings, stockFor, withRests } from "./stockFor.js";

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
  readonly order: GroupOrder;
  readonly board: BoardId;
  readonly byMachine: boolean;
  /** The how manieth of how many, at most: one that turns out not to be needed is left out. */
  readonly nth: number;
  readonly of: number;
};

/**
 * Lays every part on a sheet of its own board. What is sawn or cut by hand goes first, on sheets of its own, since a sawn
 * sheet is taken apart by cuts from edge to edge, and a part cut by hand is first sawn free. What is cut by machine lies
 * on what those sheets leave, where that is worth less than on other sheets, or else on sheets of its own.
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
  const asked = askedOf(job, plan, process, accepted);
  const count = { nth: 0, of: asked.reduce((sum, one) => sum + mostSearches(one, asked), 0) };
  const keptSheets = asked.flatMap(({ kept }) => kept.sheets ?? []);
  const nests: GroupNest[] = [];
  const { parts } = plan.built;
  const sawing = sawingOf(shop);
  const take = (nest: GroupNest): void => {
    nests.push({ ...nest, sheets: bevelsTogether(nest.sheets, parts, process, sawing) });
  };
  for (const one of asked) {
    const { group, kept } = one;
    const soFar = [...keptSheets, ...nests.flatMap((nest) => (nest.result === undefined ? [] : nest.sheets))];
    const { rows, findings: ofStock } = stockFor(job, shop, group, process, soFar);
    if (kept.sheets !== undefined) take(keptGroup(group, rows, kept.sheets, job, shop));
    else {
      const sawn = nests.filter((nest) => isSawnBefore(nest.group, group)).flatMap((nest) => nest.sheets);
      const onRests = withRests(rows, restRows(sawn, parts, process, shop), shop, group, process);
      const lay = (stock: readonly StockRow[]) => counted(nestGroup(group, stock, job, shop, soFar), group, count);
      const begun = count.nth;
      const nest = yield* betterOf(rows, onRests, lay);
      count.of -= mostSearches(one, asked) - (count.nth - begun);
      take({ ...nest, findings: [...kept.findings, ...ofStock, ...nest.findings] });
    }
  }
  const sheets = handedOn(nests.flatMap((nest) => nest.sheets));
  const rips = ripListOf(sheets, parts, process, sawing);
  const stockOf = (board: BoardId) =>
    rowsFor(
      job,
      shop,
      board,
      sheets.filter((sheet) => sheet.board !== board),
    );
  return {
    value: {
      of: hashOf(nests.map((nest) => nest.order)),
      sheets,
      left: nests.flatMap((nest) => nest.left.map((part) => part.id)),
      bounds: boundsByBoard(nests, stockOf),
      ...(rips && { rips }),
    },
    findings: [...nests.flatMap((nest) => nest.findings), ...bevelTroubles(shop, parts, rips)],
  };
}

/** A group, and how it was accepted. */
type Asked = { readonly group: Group; readonly kept: ReturnType<typeof acceptedFor> };

function askedOf(job: Job, plan: Plan, process: Process, accepted: AcceptedLayout | undefined): readonly Asked[] {
  const before: NestedSheet[] = [];
  return groupsOf(plan, process).map((group) => {
    const kept = acceptedFor(job, group, accepted, before);
    before.push(...(kept.sheets ?? []));
    return { group, kept };
  });
}

const isSawnBefore = (one: Group, group: Group): boolean =>
  group.byMachine && !one.byMachine && one.board === group.board;

/** None of what was accepted; on the rests of sawn sheets and apart from them, where there may be any. */
function mostSearches({ group, kept }: Asked, all: readonly Asked[]): number {
  if (kept.sheets !== undefined) return 0;
  return all.some((one) => isSawnBefore(one.group, group)) ? 2 : 1;
}

/** One search more of a group, as a task with its number. */
function* counted(
  search: ReturnType<typeof nestGroup>,
  { board, byMachine }: Group,
  count: { nth: number; of: number },
): Generator<NestTask, GroupNest, NestResult> {
  let step = search.next();
  while (!step.done) step = search.next(yield { order: step.value, board, byMachine, nth: count.nth++, of: count.of });
  return step.value;
}

/** A group on all stock with rests and, unless that buys the least there is, on the stock apart from them: the better one. */
function* betterOf(
  apart: readonly StockRow[],
  onRests: readonly StockRow[],
  lay: (stock: readonly StockRow[]) => Generator<NestTask, GroupNest, NestResult>,
): Generator<NestTask, GroupNest, NestResult> {
  const first = yield* lay(onRests);
  if (onRests === apart || buysLeast(first, apart)) return first;
  const second = yield* lay(apart);
  return isBetter(groupWorth(second), groupWorth(first)) ? second : first;
}

/** Whether no layout on other stock can lay as much and buy for less. */
function buysLeast(nest: GroupNest, stock: readonly StockRow[]): boolean {
  const { left, order, result } = nest;
  if (left.length > 0 || result === undefined) return false;
  const cost = result.sheets.reduce((sum, sheet) => sum + order.stock[sheet.stock]!.cost, 0);
  if (cost === 0) return true;
  const cheapest = Math.min(...stock.filter((row) => row.count === undefined).map((row) => row.cost));
  return cost <= boundOf({ ...order, items: laidItems(nest), stock }).count * cheapest * (1 + 1e-9);
}
