import { identity, shifted } from "../../geometry/frame.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { type Block, loadSolids, type SolidKernel, type SolidRef } from "../../geometry/solids.js";
import { blockAround } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { beyondOutline, surelyWithin } from "../../geometry/withinOutline.js";
import { type Finding, type FindingDef, mm, type Origin, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Job } from "../../model/job.js";
import type { Part } from "../../model/part.js";
import { finishedCorners, finishedOf, finishedRegion } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { groupsOf } from "./common/groups.js";
import { insideOutline, seenLevel } from "./common/level.js";

export const outsideSpace: FindingDef = {
  code: "outside-space",
  severity: "error",
  words: "{part} stands {out} out of the space at its {side} side",
  next: "move it or make it smaller by that much, or measure the space again",
  explain: "Every part, with its covering on, must lie inside the outline that was measured.",
};

export const aboveSpace: FindingDef = {
  code: "above-space",
  severity: "error",
  words: "{part} stands {out} higher than the space, {height}",
  next: "make the piece lower, or measure the height again",
  explain: "Every part, with its covering on, must lie under the height of the space.",
};

export const belowFloor: FindingDef = {
  code: "below-floor",
  severity: "error",
  words: "{part} stands {out} below the floor",
  next: "lift the piece by that much",
  explain: "Heights count up from the floor of the space. What lies below it would stand in the floor.",
};

export const insideSpace: Check = {
  name: "inside the space",
  findings: [outsideSpace, aboveSpace, belowFloor],
  async run(job, _shop, plan) {
    const parts = standingParts(plan).map((part) => ({ part, corners: finishedCorners(job, part) }));
    const crossing = parts.filter(({ part, corners }) => {
      return (
        !surelyWithin(
          corners.map(([x, y]) => ({ x, y })),
          job.space.outline,
        ) && !levelInside(part, job.space.outline)
      );
    });
    const heights = parts.flatMap(({ part, corners }) => overHeight(job, part, blockAround(corners)));
    if (crossing.length === 0) return gathered(heights);
    const kernel = await loadSolids();
    const sides = crossing.flatMap(({ part }) => kernel.within(() => overOutline(kernel, job, part)));
    return gathered([...sides, ...heights]);
  },
};

/** How far a part stands out of the space, and where. */
type Over = {
  readonly def: FindingDef;
  readonly part: Part;
  readonly out: number;
  readonly side?: string;
  readonly at: readonly Origin[];
  readonly facts: Finding["facts"];
};

/** One finding for a piece and a side, with the part that stands out most: one move puts them all right. */
function gathered(over: readonly Over[]): readonly Finding[] {
  return groupsOf(over, ({ def, part, side }) => [def.code, part.piece, side].join("\n")).map((group) => {
    const worst = group.reduce((a, b) => (b.out > a.out ? b : a));
    return raise(worst.def, {
      at: [...worst.part.from, ...worst.at],
      on: group.map(({ part }) => part.id),
      facts: {
        part: text(group.length === 1 ? nameOf(worst.part) : worst.part.piece),
        out: mm(worst.out),
        ...worst.facts,
      },
    });
  });
}

/** A level part whose outline, with its covering, lies inside. */
function levelInside({ part, at }: Standing, outline: Profile): boolean {
  const seen = seenLevel(finishedRegion(part), at, identity);
  return seen !== undefined && insideOutline(seen, outline);
}

function overHeight(job: Job, { part }: Standing, { min, max }: Block): readonly Over[] {
  const height = job.space.height ?? Number.POSITIVE_INFINITY;
  const over: Over[] = [];
  if (max[2] > height + tolerance.contact) {
    over.push({ def: aboveSpace, part, out: max[2] - height, at: [], facts: { height: mm(height) } });
  }
  if (min[2] < -tolerance.contact) over.push({ def: belowFloor, part, out: -min[2], at: [], facts: {} });
  return over;
}

/** Every side of the outline that the part stands over, by how much at the most. */
function overOutline(kernel: SolidKernel, job: Job, standing: Standing): readonly Over[] {
  const { outline } = job.space;
  const { part } = standing;
  const solid = finishedOf(kernel, job, standing);
  const block = kernel.extentsOf(solid);
  if (block === undefined) return [];
  const { min, max } = block;
  const room = kernel.extrude({ outer: outline, holes: [] }, max[2] - min[2] + 2, shifted(0, 0, max[2] + 1));
  const out = new Map<string, number>();
  for (const piece of kernel.components(kernel.difference(solid, [room]))) {
    const over = overSide(kernel, piece, outline);
    if (over === undefined || kernel.volumeOf(piece) <= tolerance.overlapVolume) continue;
    if (over.out > tolerance.contact) out.set(over.side, Math.max(over.out, out.get(over.side) ?? 0));
  }
  const at = [{ file: job.file, path: ["space", "outline"] }];
  return [...out].map(([side, far]) => ({ def: outsideSpace, part, out: far, side, at, facts: { side: text(side) } }));
}

function overSide(kernel: SolidKernel, piece: SolidRef, outline: Profile) {
  const block = kernel.extentsOf(piece);
  if (block === undefined) return undefined;
  const [min, max] = [block.min, block.max].map(([x, y]) => ({ x, y })) as [Point, Point];
  return beyondOutline({ min, max }, outline);
}
