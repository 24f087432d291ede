import { all, type Finding, type FindingDef, litres, mm, raise, text } from "../input/finding.js";
import type { PieceId } from "../model/ids.js";
import type { Job } from "../model/job.js";
import type { Air, Free } from "../model/piece.js";
import type { Shop } from "../model/shop.js";
import { netLitres } from "../model/volume.js";
import { aroundAfter, type Sizes, talk } from "./phases.js";
import type { Named } from "./references.js";
import { type Limit, limitsOf } from "./room.js";

export const largestSize: FindingDef = {
  code: "largest-size",
  severity: "note",
  words:
    "the {what} of {piece} is {size}, as large as the space allows: one step more, and it meets {limits}[; it holds {net} net]",
  next: "leave it so, or give {what} as a length to have it smaller",
  explain:
    "A size that is `largest` is set to the most steps of the saw at which the piece, with its coverings on and where it stands, still lies inside the space, keeps clear of obstacles and other pieces, and goes through the loading opening.",
};

export const largestHasNoRoom: FindingDef = {
  code: "largest-has-no-room",
  severity: "error",
  words: "{piece} finds no room: even at the least {what} it can have, {size}, it meets {limits}",
  next: "move it, make another of its sizes smaller, or measure the space again",
  explain:
    "A size that is `largest` begins with the least that leaves room inside. Where even that does not lie inside the space, clear of obstacles, or does not go through the loading opening, there is no size to choose.",
};

export const largestFindings: readonly FindingDef[] = [largestSize, largestHasNoRoom];

type Owner = { readonly piece: Named; readonly free: Free };

/** A size that is as large as the space allows: what one step more would meet, or where it has no room what it meets. */
export type Largest = Owner & { readonly size: number; readonly fits: boolean; readonly limits: readonly Limit[] };

/**
 * The most steps at which a piece meets nothing, the others as they are; the least there is where it has no room at all.
 * What grows goes on meeting what it meets, so halving finds it. None: the piece cannot be made, for reasons of its own.
 */
export function findLargest(
  { piece, free }: Owner,
  sizes: Sizes,
  pieces: readonly Named[],
  job: Job,
  shop: Shop,
): Largest | undefined {
  const { min, max, step } = free;
  const sizeAt = (index: number) => min + index * step;
  const limitsAt = (index: number) => limitsFor(piece, sizeAt(index), sizes, pieces, job, shop);
  const least = limitsAt(0);
  if (least === undefined) return undefined;
  if (least.length > 0) return { piece, free, size: min, fits: false, limits: least };
  const beyond = Math.round((max - min) / step) + 1;
  let [low, high] = [0, beyond];
  let limits = limitsAt(beyond) ?? [];
  while (high - low > 1) {
    const half = Math.floor((low + high) / 2);
    const met = limitsAt(half) ?? [];
    if (met.length === 0) low = half;
    else [high, limits] = [half, met];
  }
  return { piece, free, size: sizeAt(low), fits: true, limits };
}

function limitsFor(owner: Named, size: number, sizes: Sizes, pieces: readonly Named[], job: Job, shop: Shop) {
  const tried = new Map<PieceId, number>(sizes).set(owner.id, size);
  const said = talk(pieces, tried, job, shop);
  const bulkOf = (piece: Named) =>
    said.offers.has(piece.id)
      ? piece.kind.bulk?.(piece.spec, tried.get(piece.id) ?? 0, aroundAfter(piece, said, job, shop))
      : undefined;
  const own = bulkOf(owner);
  if (own === undefined) return undefined;
  const others = pieces.flatMap((piece) => {
    const bulk = piece === owner ? undefined : bulkOf(piece);
    return bulk === undefined ? [] : [[piece.id, bulk] as const];
  });
  return limitsOf(own, job.space, new Map(others));
}

/** What there is to say of a largest size once the piece is built. */
export function largestNote({ piece, free, size, fits, limits }: Largest, air: readonly Air[]): Finding {
  const net = air.reduce((sum, chamber) => sum + netLitres(chamber), 0);
  const facts = {
    piece: text(piece.id),
    what: text(String(free.from.path.at(-1))),
    size: mm(size),
    limits: all(limits.length > 0 ? limits.map(named) : [nothingKnown]),
    ...(air.length > 0 ? { net: litres(net) } : {}),
  };
  return raise(fits ? largestSize : largestHasNoRoom, { at: [free.from], on: [piece.id], facts });
}

/** A size may have no limit in the job: the space has no height. */
const nothingKnown = "the most that makes sense where the space has no `height`";

function named(limit: Limit): string {
  switch (limit.kind) {
    case "side":
      return `the ${limit.name} side of the space`;
    case "height":
      return "the height of the space";
    case "floor":
      return "the floor";
    case "opening":
      return "the loading opening";
    case "obstacle":
      return limit.name;
    case "piece":
      return limit.name;
  }
}
