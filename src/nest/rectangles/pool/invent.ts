import { pick, type Random } from "../../random.js";
import { copyOf, emptySheet, itemsIn, type Piece } from "../cutTree.js";
import type { Ground } from "../ground.js";
import { insert, powers, spotsIn } from "../insert.js";
import { largestFirst } from "../order.js";
import { takeSome } from "../takeSome.js";
import type { Tile } from "../tile.js";
import { dearest, type Finds, priceOf } from "./found.js";

/** What sheets are made of: one tile of each kind, with the kind for its item, how many of each are wanted, what each is priced at, and the sheet. */
export type Made = {
  readonly kinds: readonly Tile[];
  readonly wanted: readonly number[];
  readonly prices: readonly number[];
  readonly ground: Ground;
  /** The shortest side of all. */
  readonly least: number;
};

/**
 * Makes sheets that are worth about their cost or more, and adds them to what was found: from one of the dearest, or from an
 * empty sheet, something is taken out, and what is dear for its size is put in; over and over while it is not worth less.
 */
export function invent(finds: Finds, made: Made, count: number, random: Random): void {
  const known = dearest(finds.all(), made.prices, mostKnown);
  const { whole } = made.ground;
  for (let n = 0; n < count; n++) {
    const from = random() < 0.8 ? known[Math.floor(random() ** 2 * known.length)] : undefined;
    let tree = from ? from.tree : emptySheet(whole.w, whole.h);
    let worth = from ? priceOf(from.kinds, made.prices) : 0;
    for (let step = 0; step < steps; step++) {
      const next = changed(tree, made, random);
      const nextWorth = priceOf(itemsIn(next), made.prices);
      if (nextWorth > 1 - near) finds.add(next);
      if (nextWorth < worth - slack * random()) continue;
      tree = next;
      worth = nextWorth;
    }
  }
}

/** In pieces. */
const mostKnown = 1000;
const steps = 3;

/** Kinds tried for one sheet, the dearest for their size. */
const mostTried = 200;
const mostOut = 4;

/** Those worth so little less are kept too: prices move. */
const near = 0.03;

/** What a sheet may lose at most for the next step to go on from it. */
const slack = 0.05;

/** By what share of themselves values are blurred, and how much size counts against them. */
const blurs = [0.05, 0.2, 0.5] as const;
const sizes = [0, 0.5, 1] as const;

function changed(tree: Piece, { kinds, wanted, prices, ground, least }: Made, random: Random): Piece {
  const next = copyOf(tree);
  takeSome(next, mostOut, random);
  const spots = spotsIn(next, ground, least);
  const open = [...wanted];
  for (const kind of itemsIn(next)) open[kind] = open[kind]! - 1;
  const taste = { power: pick(random, powers), least, blinks: 0 };
  const size = pick(random, sizes);
  const blur = pick(random, blurs);
  const worth = ({ item, long, short }: Tile) => prices[item]! / (long * short) ** size;
  const wantedStill = kinds.filter(({ item }) => open[item]! > 0);
  for (const tile of largestFirst(wantedStill, worth, blur, random).slice(0, mostTried)) {
    if (spots.length === 0) break;
    for (let n = open[tile.item]!; n > 0 && insert(tile, spots, taste, random); n--);
  }
  return next;
}
