import { type Block, loadSolids } from "../../geometry/solids.js";
import { blockAround, cornersOf, separation } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check, Plan } from "../../model/build.js";
import type { Joint } from "../../model/joint.js";
import { boardOf } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { clearInPlan } from "./common/level.js";

export const partsOverlap: FindingDef = {
  code: "parts-overlap",
  severity: "error",
  words: "{part} and {other} run {deep} into each other",
  next: "move one of them by that much, make it smaller, or cut it out round the other",
  explain:
    "Two boards cannot be in one place. Parts may touch, but may overlap only where a joint lets one into the other, as a groove or a rebate does.",
};

/** Forms in which one part stands in the other's thickness. Butts and laps only touch. */
const lettingIn: ReadonlySet<Joint["form"]> = new Set(["rebate", "groove", "mitre"]);

export const partsApart: Check = {
  name: "parts against each other",
  findings: [partsOverlap],
  async run(_job, _shop, plan) {
    const pairs = closePairs(plan);
    if (pairs.length === 0) return [];
    const kernel = await loadSolids();
    return pairs.flatMap(([one, other]) => {
      const { volume, depth } = kernel.within(() =>
        kernel.overlap(boardOf(kernel, one), boardOf(kernel, other), [one.at, other.at]),
      );
      if (volume <= tolerance.overlapVolume || depth <= tolerance.contact) return [];
      const facts = { part: text(nameOf(one.part)), other: text(nameOf(other.part)), deep: mm(depth) };
      return [
        raise(partsOverlap, {
          at: [...one.part.from, ...other.part.from],
          on: [one.part.id, other.part.id],
          facts,
        }),
      ];
    });
  },
};

/** Pairs whose blocks overlap, less those that a joint lets into each other or that pass each other in plan. */
function closePairs(plan: Plan): readonly (readonly [Standing, Standing])[] {
  const parts = standingParts(plan);
  const joined = new Set(
    plan.built.joints.filter(({ form }) => lettingIn.has(form)).map(({ laps, into }) => pairKey(laps, into)),
  );
  const upright = parts.map((part) => blockAround(cornersOf(part)));
  return parts.flatMap((one, i) =>
    parts.flatMap((other, j) => {
      if (j <= i || !reach(upright[i]!, upright[j]!) || joined.has(pairKey(one.part.id, other.part.id))) return [];
      return separation(one, other) < -tolerance.contact && !clearInPlan(one, other) ? [[one, other] as const] : [];
    }),
  );
}

function reach(a: Block, b: Block): boolean {
  return [0, 1, 2].every((i) => a.min[i]! < b.max[i]! && b.min[i]! < a.max[i]!);
}

function pairKey(a: string, b: string): string {
  return a < b ? `${a}\n${b}` : `${b}\n${a}`;
}
