import type { NestStock } from "../engine.js";
import { pick, type Random } from "../random.js";
import { sheetOf, treeOf } from "./asTree.js";
import { copyOf, itemsIn, type Piece } from "./cutTree.js";
import { type Ground, usableOf } from "./ground.js";
import { insert, powers, spotsIn, type Taste } from "./insert.js";
import { largestFirst, sizes } from "./order.js";
import type { OpenSheet, Packing } from "./pack.js";
import { takeSome } from "./takeSome.js";
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
  readonly sheets: readonly GoalSheet[];
  readonly left: readonly number[];
  /** The area left over as it was at each of the last tries, the oldest replaced by the newest. */
  readonly late: number[];
  readonly tries: number;
  /** Left over now. */
  readonly area: number;
};

type GoalSheet = { readonly stock: number; readonly tree: Piece };

/** All that does not change while a goal is pursued. */
export type Yard = {
  readonly tiles: ReadonlyMap<number, Tile>;
  readonly stock: readonly NestStock[];
  readonly kerf: number;
  /** By the rows of the stock. */
  readonly grounds: readonly Ground[];
  /** The shortest side of all tiles. */
  readonly least: number;
  readonly random: Random;
};

/** Of how many tries ago a result must be no worse than. */
const lateness = 50;

/** The goal of finding room for what a packing leaves over. */
export function goalOf({ sheets, left }: Packing, { tiles, grounds }: Yard): Goal {
  const area = areaOf(left, tiles);
  const trees = sheets.map((sheet) => ({ stock: sheet.stock, tree: treeOf(sheet, grounds[sheet.stock]!.whole) }));
  return { sheets: trees, left, late: Array.from({ length: lateness }, () => area), tries: 0, area };
}

/** The goal of doing without one of the sheets of a packing. */
export function goalWithout(sheet: OpenSheet, { sheets }: Packing, yard: Yard): Goal {
  const left = sheet.laid.map(({ item }) => item);
  return goalOf({ sheets: sheets.filter((each) => each !== sheet), left }, yard);
}

/** What is laid on the sheets of a goal. */
export function packingOf({ sheets, left }: Pick<Goal, "sheets" | "left">): Packing {
  const used = sheets.filter(({ tree }) => itemsIn(tree).length > 0);
  return { sheets: used.map(({ tree, stock }) => sheetOf(tree, stock)), left };
}

/** Whether sheets are as large together as all that is to be laid on them. */
export function hasRoom(sheets: readonly GoalSheet[], { stock, kerf, tiles }: Yard): boolean {
  const space = sheets.reduce((sum, sheet) => {
    const { w, h } = usableOf(stock[sheet.stock]!, kerf);
    return sum + w * h;
  }, 0);
  return areaOf([...tiles.keys()], tiles) <= space * (1 + 1e-9);
}

/**
 * One try: some of what lies on a few of the sheets is taken out, and that and what is left over is put back where there
 * is room. The goal is reached when nothing is left.
 */
export function towards(goal: Goal, yard: Yard): Goal {
  const { random, tiles, grounds, least } = yard;
  const some = someOf(goal.sheets, 1 + Math.floor(random() * mostSheets), random);
  const fresh = some.map(({ stock, tree }) => ({ stock, tree: copyOf(tree) }));
  const out = fresh.flatMap(({ tree }) => takeSome(tree, mostOut, random));
  const spots = fresh.flatMap(({ stock, tree }) => spotsIn(tree, grounds[stock]!, least));
  const taste: Taste = { power: pick(random, powers), least, blinks };
  const loose = inOrder(
    [...goal.left, ...out].map((item) => tiles.get(item)!),
    random,
  );
  const left = loose.filter((tile) => !insert(tile, spots, taste, random)).map(({ item }) => item);
  const area = areaOf(left, tiles);
  const place = goal.tries % lateness;
  const isTaken = area <= Math.max(goal.area, goal.late[place]!);
  goal.late[place] = isTaken ? area : goal.area;
  const tries = goal.tries + 1;
  if (!isTaken) return { ...goal, tries };
  return {
    sheets: [...goal.sheets.filter((sheet) => !some.includes(sheet)), ...fresh],
    left,
    late: goal.late,
    tries,
    area,
  };
}

/** Sheets that one try touches, and what it takes out of each of them, at most. */
const mostSheets = 3;
const mostOut = 12;

/** The chance that a spot is overlooked. */
const blinks = 0.01;

/** By what share of themselves sizes are blurred: like tiles stay together only where it is little. */
const blurs = [0.05, 0.2, 0.6] as const;

function inOrder(tiles: readonly Tile[], random: Random): Tile[] {
  const blur = pick(random, blurs);
  return largestFirst(tiles, pick(random, sizes), blur, random);
}

function someOf<T>(list: readonly T[], count: number, random: Random): readonly T[] {
  const rest = [...list];
  const some: T[] = [];
  while (some.length < count && rest.length > 0) some.push(...rest.splice(Math.floor(random() * rest.length), 1));
  return some;
}

const areaOf = (items: readonly number[], tiles: ReadonlyMap<number, Tile>): number =>
  items.reduce((sum, item) => {
    const { long, short } = tiles.get(item)!;
    return sum + long * short;
  }, 0);
