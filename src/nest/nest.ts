import type { Finding, FindingDef, Outcome } from "../input/finding.js";
import type { Layout, NestedSheet, PartProcess, Plan, Process } from "../model/build.js";
import { hashOf } from "../model/hash.js";
import type { BoardId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Part } from "../model/part.js";
import type { Shop } from "../model/shop.js";
import { type Bound, boundOf } from "./bound.js";
import type { NestEngine, NestItem, NestOrder, NestResult } from "./engine.js";
import { misfitOf, partOverSheet } from "./misfit.js";
import { overMachine, sheetOverMachine } from "./overMachine.js";
import { layBlank } from "./placed.js";
import { nestRectangles } from "./rectangles/search.js";
import { sheetName } from "./sheetName.js";
import { boardWithoutSheets, shortOf, stockUsedUp } from "./shortage.js";
import { rowsFor, type StockRow } from "./stock.js";

export type NestOptions = { readonly seed: number; readonly iterations: number };

export const nestFindings: readonly FindingDef[] = [partOverSheet, boardWithoutSheets, stockUsedUp, sheetOverMachine];

/**
 * Lays every part on a sheet of its own board. What is cut by machine and what is cut by saw or by hand lie on sheets of
 * their own: a sawn sheet is taken apart by cuts from edge to edge, and a part cut by hand is first sawn free.
 *
 * Returns: what could be laid; parts that could not are in `left`, each with a finding.
 */
export function nestParts(job: Job, shop: Shop, plan: Plan, process: Process, options: NestOptions): Outcome<Layout> {
  const nests: GroupNest[] = [];
  for (const group of groupsOf(plan, process)) {
    const soFar = nests.flatMap((nest) => nest.sheets);
    nests.push(nestGroup(group, rowsOf(job, shop, group, process, soFar), job, shop, soFar, options));
  }
  const sheets = nests.flatMap((nest) => nest.sheets);
  return {
    value: {
      of: hashOf(nests.map((nest) => nest.order)),
      sheets,
      left: nests.flatMap((nest) => nest.left.map((part) => part.id)),
      bounds: boundsByBoard(nests),
    },
    findings: nests.flatMap((nest) => nest.findings),
  };
}

type Member = { readonly part: Part; readonly process: PartProcess };
/** Parts of one board that may share a sheet. */
type Group = { readonly board: BoardId; readonly byMachine: boolean; readonly members: readonly Member[] };

type GroupNest = {
  readonly group: Group;
  readonly order: Omit<NestOrder, "seed" | "iterations">;
  readonly sheets: readonly NestedSheet[];
  readonly left: readonly Part[];
  readonly bound: Bound;
  readonly findings: readonly Finding[];
};

/** Groups in the order in which their first parts stand in the plan. */
function groupsOf(plan: Plan, process: Process): Group[] {
  const processes = new Map(process.parts.map((each) => [each.part, each]));
  const groups = new Map<string, Group>();
  for (const part of plan.built.parts) {
    const how = processes.get(part.id);
    if (!how) continue;
    const byMachine = how.method === "cnc";
    const key = JSON.stringify([part.board, byMachine]);
    const members = [...(groups.get(key)?.members ?? []), { part, process: how }];
    groups.set(key, { board: part.board, byMachine, members });
  }
  return [...groups.values()];
}

/** Rectangles cut from edge to edge serve both; an engine for true shapes would stand under `machine`. */
const engines: Readonly<Record<"machine" | "bench", NestEngine>> = { machine: nestRectangles, bench: nestRectangles };

/** The stock for a group. Where its sheets are turned over on dowels, as much is left free all round as those take. */
function rowsOf(
  job: Job,
  shop: Shop,
  { board, byMachine }: Group,
  { registration }: Process,
  soFar: readonly NestedSheet[],
): readonly StockRow[] {
  const rows = rowsFor(job, shop, board, soFar);
  const pins = registration.find((each) => each.board === board);
  if (!byMachine || pins === undefined) return rows;
  const taken = Math.max(...pins.fromEnds) + pins.keepOff;
  return rows.map((row) => ({ ...row, trim: Math.max(row.trim, taken) }));
}

function nestGroup(
  group: Group,
  rows: readonly StockRow[],
  job: Job,
  shop: Shop,
  soFar: readonly NestedSheet[],
  options: NestOptions,
): GroupNest {
  const misfits = group.members.map((member) => misfitOf(job, shop, member.part, itemOf(member), rows));
  const fitting = rows.length === 0 ? [] : group.members.filter((_, i) => misfits[i]!.length === 0);
  const order = { items: fitting.map(itemOf), stock: rows, edgeToEdge: !group.byMachine };
  const result: NestResult =
    fitting.length > 0
      ? engines[group.byMachine ? "machine" : "bench"]({ ...order, ...options })
      : { sheets: [], left: [] };
  const sheets = sheetsOf(group, fitting, rows, result, soFar);
  const unlaid = result.left.map((item) => fitting[item]!.part);
  const left = group.members.map(({ part }) => part).filter((part) => !sheets.some((sheet) => holds(sheet, part)));
  const findings = [
    ...misfits.flat(),
    ...(rows.length === 0 ? [shortOf(boardWithoutSheets, job, group.board, left)] : []),
    ...(unlaid.length > 0 ? [shortOf(stockUsedUp, job, group.board, unlaid)] : []),
    ...(group.byMachine ? sheets.flatMap((sheet) => overMachine(job, sheet, shop.cnc)) : []),
  ];
  const laid = order.items.filter((_, i) => !result.left.includes(i));
  const bound = boundOf({ ...order, ...options, items: laid });
  return { group, order, sheets, left, bound, findings };
}

function itemOf({ part, process }: Member): NestItem {
  const shape = layBlank(part.blank, 0, isBackUp(process));
  return { id: part.id, shape, gap: process.gap, turns: process.turns };
}

/** As it lies in the first setup. */
const isBackUp = (process: PartProcess): boolean => process.sides[0] === "back";

function sheetsOf(
  group: Group,
  members: readonly Member[],
  rows: readonly StockRow[],
  result: NestResult,
  soFar: readonly NestedSheet[],
): NestedSheet[] {
  const sheets: NestedSheet[] = [];
  for (const { stock, placed } of result.sheets) {
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
      ...(!row.onHand && row.price !== undefined && { price: row.price }),
      placed: placed.map(({ item, x, y, turn }) => {
        const { part, process } = members[item]!;
        return { part: part.id, x, y, turn, backUp: isBackUp(process) };
      }),
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
