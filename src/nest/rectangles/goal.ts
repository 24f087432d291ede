import type { NestStock } from "../engine.js";
import type { Random } from "../random.js";
import type { Sawing } from "../saw/sawing.js";
import { type OpenSheet, type Packing, pack, type Rule, usableOf } from "./pack.js";
import type { Tile } from "./tile.js";

/**
 * A choice of sheets, one fewer than would do so far, and what of the tiles they do not take yet.
 *
 * Source: goal-driven ruin and recreate after S. Gardeyn and T. Wauters, "A goal-driven ruin and recreate heuristic for the
 * 2D variable-sized bin packing problem with guillotine constraints", European Journal of Operational Research 301, 2022
 * (from its abstract; own form). What is accepted: E. K. Burke and Y. Bykov, "The late acceptance hill-climbing heuristic",
 * European Journal of Operational Research 258, 2017 (from memory).
 */
export type Goal = {
  readonly sheets: readonly OpenSheet[];
  readonly left: readonly number[];
  /** The area left over as it was at each of the last tries, the oldest replaced by the newest. */
  readonly late: number[];
  readonly tries: number;
  /** Left over now. */
  readonly area: number;
};

/** Of how many tries ago a result must be no worse than. */
const lateness = 12;

/** The goal of finding room for what a packing leaves over. */
export function goalOf({ sheets, left }: Packing, tiles: ReadonlyMap<number, Tile>): Goal {
  const area = areaOf(left, tiles);
  return { sheets, left, late: Array.from({ length: lateness }, () => area), tries: 0, area };
}

/** The goal of doing without one of the sheets of a packing. */
export function goalWithout(sheet: OpenSheet, { sheets }: Packing, tiles: ReadonlyMap<number, Tile>): Goal {
  const left = sheet.laid.map(({ item }) => item);
  return goalOf({ sheets: sheets.filter((each) => each !== sheet), left }, tiles);
}

/** Whether sheets are as large together as all that is to be laid on them. */
export function hasRoom(
  sheets: readonly OpenSheet[],
  stock: readonly NestStock[],
  kerf: number,
  tiles: readonly Tile[],
): boolean {
  const room = sheets.reduce((sum, sheet) => {
    const { w, h } = usableOf(stock[sheet.stock]!, kerf);
    return sum + w * h;
  }, 0);
  return tiles.reduce((sum, { long, short }) => sum + long * short, 0) <= room * (1 + 1e-9);
}

export type Repacking = {
  readonly tiles: ReadonlyMap<number, Tile>;
  readonly stock: readonly NestStock[];
  readonly kerf: number;
  readonly sawing: Sawing | undefined;
  readonly random: Random;
};

/**
 * One try: the tiles of one to three of the sheets and those left over are laid anew on these sheets. The goal is reached
 * when nothing is left.
 */
export function towards(
  goal: Goal,
  { tiles, stock, kerf, sawing, random }: Repacking,
  rule: Rule,
  order: (tiles: readonly Tile[]) => readonly Tile[],
): Goal {
  const pool = someOf(goal.sheets, 1 + Math.floor(random() * 3), random);
  const items = pool.flatMap((sheet) => sheet.laid.map(({ item }) => item));
  const rows = pool.map((sheet): NestStock => ({ ...stock[sheet.stock]!, count: 1, cost: 0 }));
  const loose = order([...goal.left, ...items].map((item) => tiles.get(item)!));
  const fresh = pack(loose, rows, kerf, rule, random, sawing);
  const area = areaOf(fresh.left, tiles);
  const place = goal.tries % lateness;
  const isTaken = area <= Math.max(goal.area, goal.late[place]!);
  goal.late[place] = isTaken ? area : goal.area;
  const tries = goal.tries + 1;
  if (!isTaken) return { ...goal, tries };
  const laid = pool.map((sheet, i): OpenSheet => {
    const now = fresh.sheets.find((each) => each.stock === i);
    return { stock: sheet.stock, rests: now?.rests ?? [], laid: now?.laid ?? [], corners: new Map() };
  });
  return {
    sheets: [...goal.sheets.filter((sheet) => !pool.includes(sheet)), ...laid],
    left: fresh.left,
    late: goal.late,
    tries,
    area,
  };
}

function someOf(sheets: readonly OpenSheet[], count: number, random: Random): readonly OpenSheet[] {
  const rest = [...sheets];
  const some: OpenSheet[] = [];
  while (some.length < count && rest.length > 0) some.push(...rest.splice(Math.floor(random() * rest.length), 1));
  return some;
}

const areaOf = (items: readonly number[], tiles: ReadonlyMap<number, Tile>): number =>
  items.reduce((sum, item) => {
    const { long, short } = tiles.get(item)!;
    return sum + long * short;
  }, 0);
