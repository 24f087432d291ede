import { all, count, type Finding, type FindingDef, litres, mm, raise, text } from "../input/finding.js";
import type { PieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Free } from "../model/piece.js";
import type { Shop } from "../model/shop.js";
import { aroundOf } from "./around.js";
import { findLargest, type Largest, largestFindings } from "./largest.js";
import { aroundAfter, type Sizes, talk } from "./phases.js";
import type { Named } from "./references.js";

export const freeSizeBinds: FindingDef = {
  code: "free-size-binds",
  severity: "error",
  words: "the free size of {piece} cannot reach the net volume: at its {limit} of {size} the box is {off} {way}",
  next: "make another outside size {change}, or want {off} {want}",
  explain:
    "The free size moves in the saw's steps between the least that leaves room inside and the most that the space has. The wanted volume lies outside what that gives.",
};

export const freeSizeUnsettled: FindingDef = {
  code: "free-size-unsettled",
  severity: "warning",
  words: "the free sizes of {pieces} keep moving each other after {rounds} rounds",
  next: "give one of them as a length",
  explain:
    "Each free size is set in turn with the others held. Here they did not come to rest, so the last round stands.",
};

export const solveFindings: readonly FindingDef[] = [freeSizeBinds, freeSizeUnsettled, ...largestFindings];

/** Rounds over several free sizes before it is said that they do not come to rest. */
const mostRounds = 8;

/** Steps either side of the crossing that are looked at: where a bolt or block comes or goes the volume jumps. */
const lookAround = 1;

/** The sizes as they came to rest, what was found, and those that are as large as the space allows. */
export type Settled = {
  readonly sizes: Sizes;
  readonly findings: readonly Finding[];
  readonly largest: readonly Largest[];
};

/**
 * Settles the free sizes: each in turn, with the others held, until none moves. One that is to be as large as the space
 * allows is found by what it meets (largest.ts); the others, for a volume:
 *
 * 1. A size is a whole number of its steps between its limits. Pieces talk (offer, ask) at each size tried, so that
 *    what is asked of the box is what would be asked at that size; then the owner says how much is missing.
 * 2. The volume grows with the size but for jumps, so the step where the missing volume changes sign is held between
 *    two others. The next one to try lies where a straight line between them would cross (volumes of boxes are nearly
 *    straight); whenever that has not halved the distance, the middle is tried. No derivative is used.
 * 3. Of the steps around it the one that misses least is taken, the smaller of equals.
 */
export function settleSizes(pieces: readonly Named[], job: Job, shop: Shop): Settled {
  const owners = pieces.flatMap((piece) => {
    const free = piece.kind.free(piece.spec, aroundOf(piece, job, shop, new Map(), []));
    return free && free.max >= free.min ? [{ piece, free }] : [];
  });
  let sizes: Sizes = new Map(owners.map(({ piece, free }) => [piece.id, middle(free)]));
  for (let round = 0; round < mostRounds; round++) {
    const before = sizes;
    for (const owner of owners) sizes = new Map(sizes).set(owner.piece.id, settleOne(owner, sizes, pieces, job, shop));
    const still = owners.every(({ piece }) => before.get(piece.id) === sizes.get(piece.id));
    if (still || owners.length < 2) return settled(owners, sizes, [], pieces, job, shop);
  }
  const facts = {
    pieces: all(owners.map(({ piece }) => piece.id)),
    rounds: count(mostRounds),
  };
  const unsettled = raise(freeSizeUnsettled, {
    at: owners.map(({ free }) => free.from),
    on: owners.map(({ piece }) => piece.id),
    facts,
  });
  return settled(owners, sizes, [unsettled], pieces, job, shop);
}

function settled(
  owners: readonly Owner[],
  sizes: Sizes,
  unsettled: readonly Finding[],
  pieces: readonly Named[],
  job: Job,
  shop: Shop,
): Settled {
  const [forVolume, largest] = [owners.filter(isForVolume), owners.filter((owner) => !isForVolume(owner))];
  return {
    sizes,
    findings: [...unsettled, ...limits(forVolume, sizes, pieces, job, shop)],
    largest: largest.flatMap((owner) => findLargest(owner, sizes, pieces, job, shop) ?? []),
  };
}

const isForVolume = ({ free }: Owner) => free.aim === "volume";

type Owner = { readonly piece: Named; readonly free: Free };

function middle({ min, max, step }: Free): number {
  return min + Math.round((max - min) / 2 / step) * step;
}

function settleOne(owner: Owner, sizes: Sizes, pieces: readonly Named[], job: Job, shop: Shop): number {
  const { min, max, step } = owner.free;
  if (!isForVolume(owner)) return findLargest(owner, sizes, pieces, job, shop)?.size ?? min;
  const last = Math.round((max - min) / step);
  const sizeAt = (index: number) => min + index * step;
  const miss = remember((index) => missAt(owner.piece, sizeAt(index), sizes, pieces, job, shop));
  let low = 0;
  let high = last;
  let straight = true;
  while (high - low > 1 && miss(low) > 0 && miss(high) < 0) {
    const before = high - low;
    const share = straight ? miss(low) / (miss(low) - miss(high)) : 0.5;
    const next = Math.min(high - 1, Math.max(low + 1, low + Math.floor(share * before)));
    if (miss(next) > 0) low = next;
    else high = next;
    straight = (high - low) * 2 <= before || !straight;
  }
  if (miss(low) <= 0) high = low;
  else if (miss(high) > 0) low = high;
  let best = low;
  for (let index = Math.max(0, low - lookAround); index <= Math.min(last, high + lookAround); index++) {
    if (Math.abs(miss(index)) < Math.abs(miss(best))) best = index;
  }
  return sizeAt(best);
}

function missAt(owner: Named, size: number, sizes: Sizes, pieces: readonly Named[], job: Job, shop: Shop): number {
  const tried = new Map<PieceId, number>(sizes).set(owner.id, size);
  return owner.kind.miss(owner.spec, size, aroundAfter(owner, talk(pieces, tried, job, shop), job, shop));
}

/** A finding for every size that ended at a limit with the volume not reached. */
function limits(
  owners: readonly Owner[],
  sizes: Sizes,
  pieces: readonly Named[],
  job: Job,
  shop: Shop,
): readonly Finding[] {
  return owners.flatMap(({ piece, free }) => {
    const size = sizes.get(piece.id) ?? free.min;
    const miss = missAt(piece, size, sizes, pieces, job, shop);
    const short = size >= free.max && miss > 0;
    const over = size <= free.min && miss < 0;
    if (!short && !over) return [];
    const facts = {
      piece: text(piece.id),
      limit: text(short ? "most" : "least"),
      size: mm(size),
      off: litres(Math.abs(miss)),
      way: text(short ? "short" : "over"),
      change: text(short ? "larger" : "smaller"),
      want: text(short ? "less" : "more"),
    };
    return [raise(freeSizeBinds, { at: [free.from], on: [piece.id], facts })];
  });
}

function remember(find: (index: number) => number): (index: number) => number {
  const known = new Map<number, number>();
  return (index) => {
    const value = known.get(index) ?? find(index);
    known.set(index, value);
    return value;
  };
}
