import { distanceBetween, nearestOn } from "../../geometry/distance.js";
import { identity, shifted, type Vector } from "../../geometry/frame.js";
import { pointInProfile } from "../../geometry/inside.js";
import type { Point, Profile } from "../../geometry/profile.js";
import { type Block, loadSolids, type SolidKernel, type SolidRef } from "../../geometry/solids.js";
import { blockAround, cornersOf, separation } from "../../geometry/solids-apart.js";
import { tolerance } from "../../geometry/tolerance.js";
import { type Finding, type FindingDef, mm, raise, text } from "../../input/finding.js";
import type { Check } from "../../model/build.js";
import type { Job, Obstacle } from "../../model/job.js";
import { blockOfObstacle, finishedBlock, finishedOf, finishedRegion, obstacleOf } from "../solids.js";
import { nameOf, type Standing, standingParts } from "../standing.js";
import { insideOutline, seenLevel } from "./common/level.js";
import { tightCorners } from "./common/tightCorners.js";

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

export const foulsObstacle: FindingDef = {
  code: "fouls-obstacle",
  severity: "error",
  words: "{part} runs {deep} into {obstacle}, coming from {side}",
  next: "move the part away, notch it round {obstacle}, or measure the obstacle again",
  explain: "An obstacle stays in the vehicle, so nothing else may stand in its place.",
};

export const obstacleTooNear: FindingDef = {
  code: "obstacle-too-near",
  severity: "error",
  words: "{part} comes within {reached} of {obstacle}, from {side}, where {clear} is wanted",
  next: "move it away by {missing}, or give the obstacle a smaller `clear`",
  explain:
    "Each obstacle says how far to keep away from it on every side: for movement, for fingers, for what may be fitted later. A part, with its covering on, comes closer.",
};

export const insideSpace: Check = {
  name: "inside the space, clear of obstacles",
  findings: [outsideSpace, aboveSpace, belowFloor, foulsObstacle, obstacleTooNear],
  async run(job, _shop, plan) {
    const parts = standingParts(plan).map((part) => ({ part, block: finishedBlock(job, part) }));
    const crossing = parts.filter(({ part, block }) => {
      return !surelyInside(cornersOf(block), job.space.outline) && !levelInside(part, job.space.outline);
    });
    const obstacles = Object.entries(job.space.obstacles).flatMap(([name, obstacle]) =>
      parts
        .filter(({ block }) => separation(block, blockOfObstacle(obstacle, obstacle.clear)) < -tolerance.contact)
        .filter(({ part }) => !levelClear(part, obstacle))
        .map(({ part }) => ({ name, obstacle, part })),
    );
    const heights = parts.flatMap(({ part, block }) => heightFindings(job, part, blockAround(cornersOf(block))));
    if (crossing.length === 0 && obstacles.length === 0) return heights;
    const kernel = await loadSolids();
    return [
      ...crossing.flatMap(({ part }) => kernel.within(() => outlineFindings(kernel, job, part))),
      ...heights,
      ...obstacles.flatMap(({ name, obstacle, part }) =>
        kernel.within(() => obstacleFindings(kernel, job, part, name, obstacle)),
      ),
    ];
  },
};

/** A level part whose outline, with its covering, lies inside. */
function levelInside({ part, at }: Standing, outline: Profile): boolean {
  const seen = seenLevel(finishedRegion(part), at, identity);
  return seen !== undefined && insideOutline(seen, outline);
}

/** A level part that keeps the obstacle's clearance in plan. One that touches is left to the solids. */
function levelClear({ part, at }: Standing, { outline, clear }: Obstacle): boolean {
  const seen = seenLevel(finishedRegion(part), at, identity);
  const room = seen === undefined ? 0 : distanceBetween(seen, { outer: outline, holes: [] });
  return room > 0 && room >= clear - tolerance.contact;
}

/** Every corner inside an outline that bows nowhere inwards: then all between them is inside too. */
function surelyInside(corners: readonly Vector[], outline: Profile): boolean {
  return bowsOutOnly(outline) && corners.every(([x, y]) => pointInProfile(outline, { x, y }));
}

function bowsOutOnly(outline: Profile): boolean {
  return outline.every((b, i) => {
    const a = outline[(i + outline.length - 1) % outline.length]!;
    const c = outline[(i + 1) % outline.length]!;
    return b.bulge >= 0 && (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= 0;
  });
}

function heightFindings(job: Job, { part }: Standing, { min, max }: Block): readonly Finding[] {
  const { height } = job.space;
  const where = { at: part.from, on: [part.id] };
  const found: Finding[] = [];
  if (height !== undefined && max[2] > height + tolerance.contact) {
    const facts = { part: text(nameOf(part)), out: mm(max[2] - height), height: mm(height) };
    found.push(raise(aboveSpace, { ...where, facts }));
  }
  if (min[2] < -tolerance.contact) {
    found.push(raise(belowFloor, { ...where, facts: { part: text(nameOf(part)), out: mm(-min[2]) } }));
  }
  return found;
}

/** One finding for each side of the outline that the part stands over, by how much at the most. */
function outlineFindings(kernel: SolidKernel, job: Job, standing: Standing): readonly Finding[] {
  const { outline } = job.space;
  const { part } = standing;
  const solid = finishedOf(kernel, job, standing);
  const { min, max } = kernel.extentsOf(solid)!;
  const room = kernel.extrude({ outer: outline, holes: [] }, max[2] - min[2] + 2, shifted(0, 0, max[2] + 1));
  const out = new Map<string, number>();
  for (const piece of kernel.components(kernel.difference(solid, [room]))) {
    const over = overSide(kernel, piece, outline);
    if (over === undefined || kernel.volumeOf(piece) <= tolerance.overlapVolume) continue;
    if (over.out > tolerance.contact) out.set(over.side, Math.max(over.out, out.get(over.side) ?? 0));
  }
  return [...out].map(([side, distance]) =>
    raise(outsideSpace, {
      at: [...part.from, { file: job.file, path: ["space", "outline"] }],
      on: [part.id],
      facts: { part: text(nameOf(part)), side: text(side), out: mm(distance) },
    }),
  );
}

/** Which side of the outline a piece lies beyond, and how far: by the corners of its block, so never too little. */
function overSide(kernel: SolidKernel, piece: SolidRef, outline: Profile) {
  const block = kernel.extentsOf(piece);
  if (block === undefined) return undefined;
  const over = cornersOf({ block, at: identity })
    .map(([x, y]): Point => ({ x, y }))
    .filter((p) => !pointInProfile(outline, p))
    .flatMap((p) => nearestOn(outline, p) ?? []);
  const far = over.sort((a, b) => b.distance - a.distance)[0];
  return far && { side: far.by, out: far.distance };
}

function obstacleFindings(
  kernel: SolidKernel,
  job: Job,
  standing: Standing,
  name: string,
  obstacle: Obstacle,
): readonly Finding[] {
  const solid = finishedOf(kernel, job, standing);
  const at = [...standing.part.from, { file: job.file, path: ["space", "obstacles", name] }];
  const facts = { part: text(nameOf(standing.part)), obstacle: text(name) };
  const hit = intrusion(kernel, solid, obstacleOf(kernel, obstacle, 0), standing);
  if (hit !== undefined) {
    const side = text(sideOf(hit.shared, obstacle));
    return [raise(foulsObstacle, { at, on: [standing.part.id], facts: { ...facts, deep: mm(hit.depth), side } })];
  }
  const near = intrusion(kernel, solid, obstacleOf(kernel, obstacle, obstacle.clear), standing);
  if (near === undefined || isTightCorner(job, standing, name, near.depth)) return [];
  return [
    raise(obstacleTooNear, {
      at,
      on: [standing.part.id],
      facts: {
        ...facts,
        side: text(sideOf(near.shared, obstacle)),
        clear: mm(obstacle.clear),
        reached: mm(Math.max(0, obstacle.clear - near.depth)),
        missing: mm(near.depth),
      },
    }),
  ];
}

function intrusion(kernel: SolidKernel, solid: SolidRef, obstacle: SolidRef, { at }: Standing) {
  const { volume, depth } = kernel.overlap(solid, obstacle, [at, identity]);
  if (volume <= tolerance.overlapVolume || depth <= tolerance.contact) return undefined;
  return { depth, shared: kernel.extentsOf(kernel.intersection(solid, obstacle))! };
}

/** A rounded notch that keeps its sides and only fills the corners: told by the notch's own check. */
function isTightCorner(job: Job, standing: Standing, name: string, depth: number): boolean {
  return tightCorners(job, standing).some(
    ({ obstacle, clear, reached }) => obstacle === name && depth <= clear - reached + tolerance.contact,
  );
}

/** From where a part comes at an obstacle: along the axis on which they share least. */
function sideOf({ min, max }: Block, { outline, bottom, top }: Obstacle): string {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  const middle = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2, (bottom + top) / 2];
  const shared = [0, 1, 2].map((i) => max[i]! - min[i]!);
  const axis = shared.indexOf(Math.min(...shared));
  const names = [
    ["the left", "the right"],
    ["the rear", "the front"],
    ["below", "above"],
  ] as const;
  return names[axis]![(min[axis]! + max[axis]!) / 2 < middle[axis]! ? 0 : 1];
}
