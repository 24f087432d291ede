import type { Random } from "../random.js";
import { blankOf, cutInto, eachFree, type Piece, room } from "./cutTree.js";
import type { Ground } from "./ground.js";
import { noise, type Rest, type Split, splitRest } from "./rest.js";
import type { Tile } from "./tile.js";

/** The free end of a piece that a tile may be cut from, and the whole sheet. */
export type Spot = { readonly piece: Piece; readonly free: Rest; readonly ground: Ground };

/** How insertions are weighed. */
export type Taste = {
  /** A rest counts as its area to this power: above 1, one large rest is worth more than two halves of it. */
  readonly power: 0.5 | 1 | 1.5 | 2;
  /** Rests narrower than this are worth nothing. */
  readonly least: number;
  /** The chance that a spot is overlooked. */
  readonly blinks: number;
};

export const powers: readonly [Taste["power"], ...Taste["power"][]] = [0.5, 1, 1.5, 2];

/** Where something may be cut from a sheet as it is cut up so far, and is worth it. */
export function spotsIn(tree: Piece, ground: Ground, least: number): Spot[] {
  const spots: Spot[] = [];
  eachFree(tree, 0, 0, (piece, free) => {
    if (Math.min(free.w, free.h) > least - noise) spots.push({ piece, free, ground });
  });
  return spots;
}

type Cut = {
  readonly spot: Spot;
  readonly turn: number;
  readonly w: number;
  readonly h: number;
  readonly split: Split;
};

/**
 * Cuts a tile from the spot where what is left over stays worth most. `spots` is brought up to date.
 *
 * Returns: false where it fits in none.
 */
export function insert(tile: Tile, spots: Spot[], taste: Taste, random: Random): boolean {
  const cut = bestCut(tile, spots, taste, random);
  if (cut === undefined) return false;
  spots.splice(spots.indexOf(cut.spot), 1);
  make(cut, tile.item, (piece, free) => {
    if (Math.min(free.w, free.h) > taste.least - noise) spots.push({ piece, free, ground: cut.spot.ground });
  });
  return true;
}

function bestCut(tile: Tile, spots: readonly Spot[], taste: Taste, random: Random): Cut | undefined {
  let best: Cut | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const spot of spots) {
    const { free, ground } = spot;
    let worth = -1;
    for (const lie of tile.lies) {
      const w = sizeIn(lie.w, lie.least.w, ground.whole.w);
      const h = sizeIn(lie.h, lie.least.h, ground.whole.h);
      if (w > free.w + noise || h > free.h + noise) continue;
      if (worth < 0) {
        if (taste.blinks > 0 && random() < taste.blinks) break;
        worth = worthOf(free.w, free.h, taste);
      }
      for (const split of ground.splits(free, w, h)) {
        const cost = worth - leftWorth(free, w, h, split, taste);
        if (cost >= least) continue;
        least = cost;
        best = { spot, turn: lie.turn, w: Math.min(w, free.w), h: Math.min(h, free.h), split };
      }
    }
  }
  return best;
}

/** What a tile takes of a side: where the whole sheet is no longer, less will do. */
const sizeIn = (size: number, least: number, whole: number): number =>
  size > whole && least <= whole + noise ? whole : size;

function worthOf(w: number, h: number, { power, least }: Taste): number {
  if (w < least - noise || h < least - noise) return 0;
  const area = w * h;
  // far faster than a power
  if (power === 1) return area;
  if (power === 2) return area * area;
  return power < 1 ? Math.sqrt(area) : area * Math.sqrt(area);
}

function leftWorth(free: Rest, w: number, h: number, split: Split, taste: Taste): number {
  return split === "along"
    ? worthOf(free.w, free.h - h, taste) + worthOf(free.w - w, h, taste)
    : worthOf(free.w - w, free.h, taste) + worthOf(w, free.h - h, taste);
}

/**
 * The tile's strip is cut from the free end, or all of it becomes a strip of its own that is cut the other way first.
 * Where one cut is enough both come to the same, and the first is plainer.
 */
function make({ spot, turn, w, h, split }: Cut, item: number, tell: (piece: Piece, free: Rest) => void): void {
  const { piece, free } = spot;
  const isWhole = free.w - w <= noise || free.h - h <= noise;
  const across = isWhole ? piece.across : split === "across";
  const { right, above } = splitRest(free, w, h, across ? "across" : "along");
  const strip = stripOf(blankOf(item, turn, w, h), free, across);
  const inStrip = across ? above : right;
  if (inStrip) tell(strip, inStrip);
  const beyond = across ? right : above;
  const whole = across === piece.across ? piece : cutInto(free.w, free.h, across, []);
  if (whole !== piece) {
    piece.strips.push(whole);
    piece.left = 0;
  }
  whole.strips.push(strip);
  whole.left = room(whole.left - (across ? w : h));
  if (beyond) tell(whole, beyond);
}

/** What is cut from a free end for a blank: the blank itself where it is as long as the cut. */
function stripOf(blank: Piece, free: Rest, across: boolean): Piece {
  if (across) return free.h - blank.h <= noise ? blank : cutInto(blank.w, free.h, false, [blank]);
  return free.w - blank.w <= noise ? blank : cutInto(free.w, blank.h, true, [blank]);
}
