import { isBetter } from "../../engine.js";
import { pick, type Random } from "../../random.js";
import type { Sawing } from "../../saw/sawing.js";
import { smallCuts } from "../../saw/sawnSheets.js";
import { stockWorth } from "../../stockWorth.js";
import { sheetOf } from "../asTree.js";
import { itemsIn, type Piece } from "../cutTree.js";
import type { Yard } from "../goal.js";
import { insert, spotsIn } from "../insert.js";
import type { Packing } from "../pack.js";
import { noise } from "../rest.js";
import type { Tile } from "../tile.js";
import { type Blank as CutBlank, cutBy } from "./cutBy.js";
import { type Blank, type KindOf, kindsOf, sizeOn, turnFor } from "./kind.js";
import { coverBy, mostKinds, type Pattern, patternsFor, workFor } from "./patterns.js";

/** Sheets that are cut up already, and the tiles that are not on any of them. */
export type Begun = {
  readonly sheets: readonly { readonly stock: number; readonly tree: Piece }[];
  readonly left: readonly number[];
};

/**
 * Layouts by patterns, for orders in which few sizes repeat: a few at each call, by chance different ones.
 *
 * Method:  as many whole sheets of each pattern as the least cover takes; then the least cover of what is left, and so on.
 *          Where it takes only parts of sheets, one of them is laid whole. What a pattern gives too much of stays free, and
 *          other tiles are cut from there. As what is left may go better by other means, `finish` is given every stage,
 *          and the best that comes of them is taken.
 * Sawn:    a pattern with a cut of a piece too small to hold is not laid.
 * Returns: undefined for other orders.
 */
export function layingByPatterns(
  tiles: readonly Tile[],
  yard: Yard,
  sawing: Sawing | undefined,
  finish: (begun: Begun) => Packing,
): (() => readonly Packing[]) | undefined {
  const kinds = kindsOf(tiles);
  if (kinds.length > mostKinds || tiles.length < leastOfEach * kinds.length) return undefined;
  const blanks = yard.stock.map(({ cost, count }, i): Blank => {
    const { w, h } = yard.grounds[i]!.whole;
    return { w, h, cost, ...(count !== undefined && { count }) };
  });
  const found = patternsFor(kinds, blanks, workFor(tiles.length));
  if (found === undefined) return undefined;
  const order: Order = { kinds, blanks, yard, sawing, patterns: found.patterns, held: new Map() };
  return () =>
    Array.from({ length: dives }, () => bestOf(stagesOf(order).map(finish), order)).filter((one) => one !== undefined);
}

/** So many of each size at least, in the mean. */
const leastOfEach = 4;

/** Layouts of one call: which sheet is laid whole where the cover takes parts is left to chance. */
const dives = 4;

type Order = {
  readonly kinds: readonly KindOf<Tile>[];
  readonly blanks: readonly Blank[];
  readonly yard: Yard;
  readonly sawing: Sawing | undefined;
  readonly patterns: readonly Pattern[];
  /** Whether every piece of a pattern can be held, where all of its blanks are laid. */
  readonly held: Map<Pattern, boolean>;
};

/** Least left over, and then the least stock; of those alike the one with most sheets by patterns. */
function bestOf(packings: readonly Packing[], { yard }: Order): Packing | undefined {
  const worths = packings.map(({ sheets, left }) => [
    left.reduce((sum, item) => sum + yard.tiles.get(item)!.long * yard.tiles.get(item)!.short, 0),
    ...stockWorth(sheets.map(({ stock }) => yard.stock[stock]!)),
  ]);
  let best = packings.length - 1;
  for (let i = best - 1; i >= 0; i--) if (isBetter(worths[i]!, worths[best]!)) best = i;
  return packings[best];
}

function stagesOf(order: Order): readonly Begun[] {
  const { kinds, blanks, patterns, yard } = order;
  const stages: Begun[] = [];
  const refused = new Set<Pattern>();
  let now: Begun = { sheets: [], left: kinds.flatMap(({ of }) => of.map(({ item }) => item)) };
  while (now.left.length > 0) {
    const left = new Set(now.left);
    const wanted = kinds.map(({ lies, of }) => ({ lies, wanted: of.filter(({ item }) => left.has(item)).length }));
    const used = (row: number) => now.sheets.filter(({ stock }) => stock === row).length;
    const { amounts } = coverBy(
      patterns,
      wanted,
      blanks.map((blank, row) => lessBy(blank, used(row))),
    );
    const next = nextSheets(patterns, amounts, refused, yard.random);
    if (next.length === 0) break;
    for (const pattern of next) {
      const laid = withOneMore(now, pattern, order);
      if (laid) now = laid;
      else refused.add(pattern);
    }
    stages.push(now);
  }
  return stages;
}

const lessBy = (blank: Blank, used: number): Blank =>
  blank.count === undefined ? blank : { ...blank, count: Math.max(0, blank.count - used) };

/** As many whole sheets as the cover takes; where it takes none whole, one of those that it takes parts of. */
function nextSheets(
  patterns: readonly Pattern[],
  amounts: readonly number[],
  refused: ReadonlySet<Pattern>,
  random: Random,
): readonly Pattern[] {
  const whole = patterns.flatMap((pattern, i) =>
    refused.has(pattern) ? [] : Array.from({ length: Math.floor(amounts[i]! + noise) }, () => pattern),
  );
  if (whole.length > 0) return whole;
  const [first, ...others] = patterns
    .map((pattern, i) => ({ pattern, amount: amounts[i]! }))
    .filter(({ pattern, amount }) => amount > leastPart && !refused.has(pattern))
    .sort((a, b) => b.amount - a.amount)
    .slice(0, 3);
  return first ? [pick(random, [first, ...others]).pattern] : [];
}

const leastPart = 0.05;

/** A sheet more, cut up by a pattern; undefined where it cannot be sawn, or nothing of it is wanted any more. */
function withOneMore({ sheets, left }: Begun, pattern: Pattern, order: Order): Begun | undefined {
  const { counts, filling, sheet } = pattern;
  const { kinds, yard } = order;
  const ground = yard.grounds[sheet]!;
  const loose = new Set(left);
  const next = (kind: number, lie: number): CutBlank | undefined => {
    const tile = kinds[kind]!.of.find(({ item }) => loose.has(item));
    if (tile === undefined) return undefined;
    loose.delete(tile.item);
    const size = sizeOn(kinds[kind]!.lies[lie]!, ground.whole);
    return { ...size, item: tile.item, turn: turnFor(tile.lies, size, ground.whole) };
  };
  const tree = cutBy(filling, ground.whole, next);
  if (tree === undefined) return undefined;
  const isWhole = itemsIn(tree).length === counts.reduce((sum, count) => sum + count, 0);
  if (!isWhole) fillUp(tree, loose, sheet, yard);
  if (!isHeld(tree, pattern, isWhole, order)) return undefined;
  const laid = new Set(itemsIn(tree));
  return { sheets: [...sheets, { stock: sheet, tree }], left: left.filter((item) => !laid.has(item)) };
}

function isHeld(tree: Piece, pattern: Pattern, isWhole: boolean, { held, sawing, yard }: Order): boolean {
  if (!sawing) return true;
  const known = isWhole ? held.get(pattern) : undefined;
  if (known !== undefined) return known;
  const is = smallCuts(sheetOf(tree, pattern.sheet), yard.stock[pattern.sheet]!, sawing) === 0;
  if (isWhole) held.set(pattern, is);
  return is;
}

/** Cuts what there is room for from what a pattern leaves free. */
function fillUp(tree: Piece, loose: ReadonlySet<number>, sheet: number, { grounds, least, random, tiles }: Yard): void {
  const spots = spotsIn(tree, grounds[sheet]!, least);
  const largestFirst = [...loose].map((item) => tiles.get(item)!).sort((a, b) => b.long * b.short - a.long * a.short);
  for (const tile of largestFirst) if (spots.length > 0) insert(tile, spots, { power: 1.5, least, blinks: 0 }, random);
}
