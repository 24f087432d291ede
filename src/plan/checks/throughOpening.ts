import { identity, type Vector } from "../../geometry/frame.js";
import type { Block } from "../../geometry/solids.js";
import { blockAround } from "../../geometry/solids-apart.js";
import { missingThrough } from "../../geometry/throughOpening.js";
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

type Thing = { readonly what: string; readonly size: Vector; readonly at: readonly Origin[]; readonly on: string };

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

function sizeOf({ min, max }: Block): Vector {
  return [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
}
