import { identity } from "../../geometry/frame.js";
import type { Block } from "../../geometry/solids.js";
import { blockAround } from "../../geometry/solids-apart.js";
import { type Finding, type FindingDef, mm, type Origin, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { PieceId } from "../../model/ids.js";
import type { Job } from "../../model/job.js";
import type { Part } from "../../model/part.js";
import { finishedBlock, finishedCorners } from "../solids.js";
import { nameOf, standingIn } from "../standing.js";

export const willNotGoIn: FindingDef = {
  code: "will-not-go-in",
  severity: "error",
  words:
    "{what} does not go through the loading opening, {width} x {height}: it is {missing} too large, turned as it may be",
  next: "make it smaller, split it, or check the opening: it must come out again too",
  explain:
    "What is built outside must go in through the loading opening, and come out again for service. Each of the three ways to show the opening a box's face is tried, straight and tilted, by W. B. Carver's condition for a rectangle in a rectangle.",
};

type Size = readonly [number, number, number];
type Thing = { readonly what: string; readonly size: Size; readonly at: readonly Origin[]; readonly on: string };

export const throughOpening: Check = {
  name: "through the loading opening",
  findings: [willNotGoIn],
  run(job, _shop, plan) {
    const opening = job.space.opening;
    if (opening === undefined) return [];
    const { parts, air } = plan.built;
    const boxes = new Set(parts.filter(({ id }) => air.some(({ walls }) => walls.includes(id))).map((p) => p.piece));
    const things = [
      ...[...boxes].map((piece) => wholeOf(job, piece, parts)),
      ...parts.filter((part) => !boxes.has(part.piece)).map((part) => singleOf(job, part)),
    ];
    return things.flatMap((thing) => tooLarge(thing, opening.width, opening.height));
  },
};

function tooLarge({ what, size, at, on }: Thing, width: number, height: number): readonly Finding[] {
  const missing = missingThrough(size, width, height);
  if (missing <= 0) return [];
  const facts = { what: text(what), width: mm(width), height: mm(height), missing: mm(missing) };
  return [raise(willNotGoIn, { at, on: [on], facts })];
}

/** A box goes in whole, coverings and all. */
function wholeOf(job: Job, piece: PieceId, parts: readonly Part[]): Thing {
  const own = parts.filter((part) => part.piece === piece);
  const corners = own.flatMap((part) => finishedCorners(job, standingIn(identity, part)));
  return { what: piece, size: sizeOf(blockAround(corners)), at: own[0]?.from ?? [], on: piece };
}

function singleOf(job: Job, part: Part): Thing {
  return {
    what: nameOf(part),
    size: sizeOf(finishedBlock(job, standingIn(identity, part)).block),
    at: part.from,
    on: part.id,
  };
}

function sizeOf({ min, max }: Block): Size {
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
}

/** How much wider and higher the opening would have to be for some face of the block to go through; 0: it goes. */
export function missingThrough([a, b, c]: Size, width: number, height: number): number {
  const faces = [
    [a, b],
    [a, c],
    [b, c],
  ] as const;
  return Math.min(...faces.map(([p, q]) => missingFor(p, q, width, height)));
}

/** By halving: a rectangle that fits some opening fits every larger one. */
function missingFor(p: number, q: number, width: number, height: number): number {
  if (fitsThrough(p, q, width, height)) return 0;
  let [little, enough] = [0, Math.max(p, q)];
  while (enough - little > 0.01) {
    const half = (little + enough) / 2;
    if (fitsThrough(p, q, width + half, height + half)) enough = half;
    else little = half;
  }
  return enough;
}

/**
 * Whether a rectangle p x q fits in one of width x height, turned as it may be.
 * Source: W. B. Carver, "Solution to problem E 1225", American Mathematical Monthly 64, 1957; from memory: with p >= q
 * and a >= b it fits if p <= a and q <= b, or if p > a and b >= (2 p q a + (p2 - q2) sqrt(p2 + q2 - a2)) / (p2 + q2).
 */
export function fitsThrough(oneSide: number, otherSide: number, width: number, height: number): boolean {
  const [p, q] = [Math.max(oneSide, otherSide), Math.min(oneSide, otherSide)];
  const [a, b] = [Math.max(width, height), Math.min(width, height)];
  if (q > b) return false;
  if (p <= a) return true;
  const square = p * p + q * q;
  return b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(square - a * a)) / square;
}
